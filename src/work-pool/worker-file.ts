import { fileURLToPath } from 'node:url';

const isSource = import.meta.url.endsWith('.ts');

/** What a thread of the pool begins with: what was built, or the source with what compiles it. */
export const WORKER_FILE = {
  filename: fileURLToPath(new URL(isSource ? './worker.ts' : './worker.js', import.meta.url)),
  ...(isSource ? { execArgv: ['--import', '@swc-node/register/esm-register'] } : {}),
};
