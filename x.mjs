import { benchOthersWait } from './test/bench/others-wait.mjs';
await benchOthersWait(process.argv[2], (n,v,u,c)=>console.log(n,Math.round(v),u,c));
