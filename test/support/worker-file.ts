import { fileURLToPath } from 'node:url';
import { join } from 'node:path';

/** Where `compile-threads.mjs` puts what threads load: compiled once, not in each thread. */
export const WORKER_FILE = {
  filename: join(
    fileURLToPath(new URL('../..', import.meta.url)),
    'test-output/threads/src/work-pool/worker.js',
  ),
};
