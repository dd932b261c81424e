import { defineConfig } from 'rolldown';

/** What a thread of the pool opens, joined in a few files. */
export default defineConfig({
  input: 'dist/src/work-pool/worker.js',
  platform: 'node',
  external: /^[^./]/,
  output: { dir: 'dist/src/work-pool/thread', keepNames: true },
});
