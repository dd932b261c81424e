/**
 * Compiles what runs outside the tests' own world, once before all tests: the service, the commands
 * and the thread of the pool. Each is a few large files, as hundreds of small ones take long to open.
 */
import { transform } from '@swc/core';
import { rmSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { rolldown } from 'rolldown';

const root = fileURLToPath(new URL('../..', import.meta.url));
const ENTRIES = [
  'src/main',
  'src/work-pool/worker',
  ...['plan', 'checks', 'backup', 'restore', 'certificate'].map((name) => `src/cli/${name}`),
  'test/support/service',
];
/** What finds files beside its own, is compiled for the machine, or is there for others to bring. */
const LEFT_APART =
  /^(node:|better-sqlite3$|highs$|pg$|piscina$|jsonc-parser$|@nestjs\/(microservices|websockets)|@fastify\/)/;

export default async function compileProgram() {
  const dir = join(root, 'test-output/program');
  rmSync(dir, { recursive: true, force: true });
  const program = await rolldown({
    cwd: root,
    input: Object.fromEntries(ENTRIES.map((path) => [basename(path), `${path}.ts`])),
    platform: 'node',
    external: LEFT_APART,
    resolve: { extensionAlias: { '.js': ['.ts', '.js'] } },
    plugins: [{ name: 'swc', transform: { filter: { id: /\.ts$/ }, handler: compile } }],
    logLevel: 'silent',
  });
  await program.write({ dir, keepNames: true, entryFileNames: '[name].js' });
  await program.close();
}

async function compile(source, filename) {
  const { code } = await transform(source, { filename, sourceMaps: false });
  return { code, moduleType: 'js' };
}
