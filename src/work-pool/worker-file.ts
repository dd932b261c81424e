import { fileURLToPath } from 'node:url';

const isSource = import.meta.url.endsWith('.ts');
/** What was built is joined in a few files: a thread that opens hundreds is there much later. */
const FILE = isSource ? './worker.ts' : './thread/worker.js';

/** What a thread of the pool begins with: what was built, or the source with what compiles it. */
export const WORKER_FILE = {
  filename: fileURLToPath(new URL(FILE, import.meta.url)),
  ...(isSource ? { execArgv: ['--import', '@swc-node/register/esm-register'] } : {}),
};
