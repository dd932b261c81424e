/**
 * Compiles what runs outside the tests' own world, once before all tests: the core, the service, the
 * commands and the thread of the pool. Each is a few large files, as hundreds of small ones take long
 * to open.
 */
import { transform } from '@swc/core';
import { readdirSync, rmSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { rolldown } from 'rolldown';

const root = fileURLToPath(new URL('../..', import.meta.url));
const ENTRIES = [
  'src/main',
  ...['plan', 'checks', 'backup', 'restore', 'certificate'].map((name) => `src/cli/${name}`),
  'test/support/service',
  'test/support/shared-house',
];
/** Stands for all files of the core, each a namespace that is named for its path. */
const CORE = 'core-of-tests';
/** Stands for the library that gives threads. */
const THREADS = join(root, 'test/support/threads-for-all.ts');
/** What finds files beside its own, is compiled for the machine, or is there for others to bring. */
const LEFT_APART =
  /^(node:|better-sqlite3$|highs$|pg$|playwright-core$|jsonc-parser$|@nestjs\/(microservices|websockets)|@fastify\/)/;

export default async function compileProgram() {
  const dir = join(root, 'test-output/program');
  rmSync(dir, { recursive: true, force: true });
  const program = await rolldown({
    cwd: root,
    input: {
      ...Object.fromEntries(ENTRIES.map((path) => [basename(path), `${path}.ts`])),
      'thread/worker': 'src/work-pool/worker.ts',
      core: CORE,
    },
    platform: 'node',
    external: LEFT_APART,
    resolve: { extensionAlias: { '.js': ['.ts', '.js'] } },
    plugins: [
      {
        name: 'threads',
        resolveId: (id, importer) =>
          id !== 'piscina' ? undefined : importer === THREADS ? { id, external: true } : THREADS,
      },
      {
        name: 'core',
        resolveId: (id) => (id === CORE ? id : undefined),
        load: (id) => (id === CORE ? wholeCore() : undefined),
      },
      { name: 'swc', transform: { filter: { id: /\.ts$/ }, handler: compile } },
    ],
    logLevel: 'silent',
  });
  await program.write({ dir, keepNames: true, entryFileNames: '[name].js' });
  await program.close();

  const core = await import(pathToFileURL(join(dir, 'core.js')).href);
  const names = Object.entries(core).map(([path, file]) => [path, Object.keys(file)]);
  writeFileSync(join(dir, 'core-names.json'), JSON.stringify(Object.fromEntries(names)));
}

function wholeCore() {
  const paths = readdirSync(join(root, 'shared'), { recursive: true })
    .map((path) => `shared/${path.replaceAll('\\', '/')}`)
    .filter((path) => path.endsWith('.ts'));
  return paths
    .map((path) => `export * as ${JSON.stringify(path)} from ${JSON.stringify(join(root, path))};`)
    .join('\n');
}

async function compile(source, filename) {
  const { code } = await transform(source, { filename, sourceMaps: false });
  return { code, moduleType: 'js' };
}
