import { chromium } from 'playwright-core';
const b=await chromium.launch({executablePath:'/usr/bin/chromium',args:['--no-sandbox']});
const farms=await (await fetch('http://localhost:4188/api/farms')).json(); const id=farms[0].id;
const only=process.argv[2]?.split(',');
for(const [w,n] of [[1280,'d'],[390,'p']]){const p=await b.newPage({viewport:{width:w,height:900}});p.on('console',m=>['error','warning'].includes(m.type())&&console.log(n,m.text().slice(0,300)));p.on('pageerror',e=>console.log('ERR',e.message));
for(const path of ['','/walk','/land','/sizes','/work','/print']){ if(only&&!only.includes(path||'season'))continue; await p.goto(`http://localhost:4188/farm/${id}/pasture${path}`);await p.waitForTimeout(3500);await p.screenshot({path:`/tmp/s-${n}${path.replace('/','-')||'-season'}.png`,fullPage:true});}
}
await b.close();
