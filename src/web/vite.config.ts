import react from '@vitejs/plugin-react';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: here('.'),
  plugins: [react()],
  build: {
    outDir: here('../../dist/web'),
    emptyOutDir: true,
    // Phones of 2023: light-dark() of the tokens is turned into what they know.
    cssTarget: ['chrome111', 'safari16.4', 'firefox114'],
    // Charts are a chunk of their own, loaded when the first plan is opened.
    chunkSizeWarningLimit: 600,
  },
  server: { proxy: { '/api': 'http://127.0.0.1:3210' } },
});
