import { mkdtempSync, rmSync } from 'node:fs';
import { randomUUID } from 'node:crypto';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { service } from './outside.js';

/** A database that service tests run on, and how to get an empty one. */
export interface TestDatabase {
  readonly name: 'SQLite' | 'PostgreSQL';
  /** Makes an empty place for tables: what to set in the environment, and how to remove it again. */
  readonly empty: () => Promise<EmptyDatabase>;
}

export interface EmptyDatabase {
  readonly env: Readonly<Record<'DATABASE_URL' | 'DATA_DIR', string | undefined>>;
  readonly remove: () => Promise<void>;
}

/**
 * Every database that tests can reach: SQLite always, PostgreSQL where `TEST_DATABASE_URL` says.
 *
 * @throws Error when `REQUIRE_POSTGRES` is 1 and there is no such URL
 */
export function databases(env: NodeJS.ProcessEnv = process.env): TestDatabase[] {
  const url = env['TEST_DATABASE_URL'];
  if (url) return [SQLITE, postgresAt(url)];
  if (env['REQUIRE_POSTGRES'] === '1') {
    throw new Error(
      'REQUIRE_POSTGRES is 1, but TEST_DATABASE_URL is not set. Set it, or unset both.',
    );
  }
  return [SQLITE];
}

/** One of them: for what is worked out of the rows, or refused before any is written. */
export const anyDatabase = (): TestDatabase => databases()[0]!;

const SQLITE: TestDatabase = {
  name: 'SQLite',
  empty: () => {
    const folder = mkdtempSync(join(tmpdir(), 'broodfold-test-'));
    return Promise.resolve({
      env: { DATABASE_URL: undefined, DATA_DIR: folder },
      remove: () => Promise.resolve(rmSync(folder, { recursive: true, force: true })),
    });
  },
};

/** Each suite gets a schema of its own, so that suites do not meet. */
function postgresAt(url: string): TestDatabase {
  return {
    name: 'PostgreSQL',
    empty: async () => {
      const schema = `test_${randomUUID().replaceAll('-', '')}`;
      await run(url, `CREATE SCHEMA ${schema}`);
      const own = new URL(url);
      own.searchParams.set('options', `-c search_path=${schema}`);
      return {
        // A space must not become a plus, which PostgreSQL would take as one.
        env: { DATABASE_URL: own.href.replaceAll('+', '%20'), DATA_DIR: undefined },
        remove: () => run(url, `DROP SCHEMA ${schema} CASCADE`),
      };
    },
  };
}

async function run(url: string, sql: string): Promise<void> {
  const source = new service.DataSource({ type: 'postgres', url });
  try {
    await source.initialize();
    await source.query(sql);
  } catch (error) {
    const reason = error instanceof Error ? error.message || error.name : String(error);
    throw new Error(`PostgreSQL at TEST_DATABASE_URL cannot be used: ${reason}`, { cause: error });
  } finally {
    if (source.isInitialized) await source.destroy();
  }
}
