import { DataSource, type QueryRunner } from 'typeorm';

/**
 * Reads a database as it is at one moment, while others go on writing: on SQLite through a
 * connection of its own, on PostgreSQL in a repeatable-read transaction.
 */
export async function inSnapshot<T>(
  source: DataSource,
  readAll: (runner: QueryRunner) => Promise<T>,
): Promise<T> {
  const { options } = source;
  if (options.type !== 'better-sqlite3') {
    const runner = source.createQueryRunner();
    try {
      return await inTransaction(runner, readAll);
    } finally {
      await runner.release();
    }
  }
  const own = new DataSource({ type: options.type, database: options.database, readonly: true });
  await own.initialize();
  try {
    return await inTransaction(own.createQueryRunner(), readAll);
  } finally {
    await own.destroy();
  }
}

async function inTransaction<T>(
  runner: QueryRunner,
  readAll: (runner: QueryRunner) => Promise<T>,
): Promise<T> {
  const isPostgres = runner.connection.options.type === 'postgres';
  await runner.startTransaction(...(isPostgres ? (['REPEATABLE READ'] as const) : []));
  try {
    return await readAll(runner);
  } finally {
    await runner.rollbackTransaction();
  }
}
