/** Compiles the source that threads of the pool load, once before all tests. */
import { transformFileSync } from '@swc/core';
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));

export default function compileThreads() {
  const out = join(root, 'test-output/threads');
  rmSync(out, { recursive: true, force: true });
  for (const file of sourceFiles()) {
    const { code } = transformFileSync(join(root, file));
    const path = join(out, file.replace(/\.ts$/, '.js'));
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, code);
  }
}

const sourceFiles = () =>
  ['shared', 'src'].flatMap((room) =>
    readdirSync(join(root, room), { recursive: true })
      .filter((file) => file.endsWith('.ts') && !file.startsWith(`web${sep}`))
      .map((file) => join(room, file)),
  );
