import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { PROJECT_ROOT } from '../../src/reference/load-tables.js';
import type { TestDatabase } from './databases.js';
import { compiled } from './compiled.js';
import { service } from './outside.js';

const { DataSource, ownNames, dataSourceOptions } = service;

const { scripts } = JSON.parse(readFileSync(join(PROJECT_ROOT, 'package.json'), 'utf8')) as {
  readonly scripts: Readonly<Record<'backup' | 'restore', string>>;
};
/** The service as it runs from source, so that no build is needed. */
const SERVICE = scripts.backup.replace('src/cli/backup.ts', 'src/main.ts');

/** A database, and a folder for copies of it. */
export interface Place {
  readonly env: NodeJS.ProcessEnv;
  readonly folder: string;
  readonly remove: () => Promise<void>;
}

export async function emptyPlace(database: TestDatabase): Promise<Place> {
  const { env, remove } = await database.empty();
  const folder = env.DATA_DIR ?? mkdtempSync(join(tmpdir(), 'broodfold-test-'));
  const { DATABASE_URL: _url, NODE_OPTIONS: _options, ...rest } = process.env;
  return {
    folder,
    env: {
      ...rest,
      DATA_DIR: folder,
      ...(env.DATABASE_URL === undefined ? {} : { DATABASE_URL: env.DATABASE_URL }),
    },
    remove: async () => {
      await removeKept(env.DATABASE_URL);
      await remove();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** Schemas in which a restore kept what was there before. */
async function removeKept(url: string | undefined): Promise<void> {
  if (url === undefined) return;
  const source = await new DataSource({ type: 'postgres', url }).initialize();
  const schemas = (await source.query(
    `SELECT nspname AS "name" FROM pg_namespace WHERE nspname LIKE current_schema() || '\\_before\\_%'`,
  )) as { name: string }[];
  for (const { name } of schemas) await source.query(`DROP SCHEMA "${name}" CASCADE`);
  await source.destroy();
}

export interface Output {
  /** Null when it was killed. */
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs a command of the terminal to its end; `kill` says when it is killed. */
export async function terminal(
  command: keyof typeof scripts,
  { env }: Place,
  args: readonly string[] = [],
  kill?: (child: ChildProcess) => void,
): Promise<Output> {
  const [node, ...rest] = compiled(scripts[command]) as [string, ...string[]];
  const child = spawn(node, [...rest, ...args], { cwd: PROJECT_ROOT, env });
  const said = { stdout: '', stderr: '' };
  for (const stream of ['stdout', 'stderr'] as const)
    child[stream].on('data', (chunk: Buffer) => (said[stream] += chunk.toString()));
  kill?.(child);
  const [code] = (await once(child, 'close')) as [number | null];
  return { code, ...said };
}

/** The service as a program of its own, that can be killed. */
export async function startService(place: Place): Promise<{
  readonly url: string;
  readonly kill: (signal: NodeJS.Signals) => Promise<void>;
}> {
  const [node, ...rest] = compiled(SERVICE) as [string, ...string[]];
  const child = spawn(node, rest, { cwd: PROJECT_ROOT, env: { ...place.env, PORT: '0' } });
  const gone = once(child, 'exit');
  const url = await new Promise<string>((resolve, reject) => {
    let said = '';
    for (const stream of [child.stdout, child.stderr])
      stream.on('data', (chunk: Buffer) => {
        said += chunk.toString();
        const found = /ready at (http:\/\/\S+)\//.exec(said)?.[1];
        if (found) resolve(found);
      });
    child.once('exit', () => reject(new Error(`The service ended: ${said}`)));
  });
  return {
    url,
    kill: async (signal) => {
      child.kill(signal);
      await gone;
    },
  };
}

export async function withDatabase<T>(
  { env }: Place,
  work: (source: InstanceType<typeof DataSource>) => Promise<T>,
): Promise<T> {
  const source = new DataSource({ ...dataSourceOptions(env), migrationsRun: false });
  await source.initialize();
  try {
    return await work(source);
  } finally {
    await source.destroy();
  }
}

/** Everything in every table, as text. */
export const contentsOf = (place: Place): Promise<string> =>
  withDatabase(place, async (source) => {
    const runner = source.createQueryRunner();
    const names = (await ownNames(runner)).sort();
    const lines: string[] = [];
    for (const name of names) {
      const rows = (await runner.query(`SELECT * FROM "${name}"`)) as object[];
      lines.push(...rows.map((row) => `${name} ${JSON.stringify(row)}`).sort());
    }
    await runner.release();
    return lines.join('\n');
  });

/** Waits until a copy is being put in place, as far as others can see it. */
export async function restoreBegun(place: Place): Promise<void> {
  const { DATABASE_URL: url } = place.env;
  const source = url && (await new DataSource({ type: 'postgres', url }).initialize());
  for (;;) {
    const hasBegun = source
      ? 0 < ((await source.query(HELD_FOR_RESTORE)) as unknown[]).length
      : existsSync(join(place.folder, 'broodfold.sqlite.restoring'));
    if (hasBegun) break;
    await setTimeout(5);
  }
  if (source) await source.destroy();
}

const HELD_FOR_RESTORE = `SELECT 1 FROM pg_locks WHERE locktype = 'advisory' AND mode = 'ExclusiveLock'
  AND classid::bigint = hashtext('broodfold')::bigint & 4294967295
  AND objid::bigint = hashtext(current_schema())::bigint & 4294967295`;
