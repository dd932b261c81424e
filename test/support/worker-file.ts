import { fileURLToPath } from 'node:url';
import { join } from 'node:path';

/** Where `compile-program.mjs` puts what threads load: compiled once, not in each thread. */
export const WORKER_FILE = {
  filename: join(
    fileURLToPath(new URL('../..', import.meta.url)),
    'test-output/program/thread/worker.js',
  ),
};
