import { DataSource, type DataSourceOptions, type QueryRunner } from 'typeorm';
import { RESTORE_LOCK } from './database-hold.js';
import { stamp } from './backup.js';
import { isRunning } from './is-running.js';
import type { OpenArchive } from './open-archive.js';
import { rebuild } from './rebuild.js';
import { ownNames } from './stored-table.js';

/**
 * Puts an archive in the place of the tables in PostgreSQL, in one transaction.
 *
 * @returns the schema in which the old tables are kept
 */
export async function restorePostgres(
  options: Extract<DataSourceOptions, { type: 'postgres' }>,
  archive: OpenArchive,
): Promise<string | undefined> {
  const source = new DataSource({ ...options, migrationsRun: false });
  await source.initialize();
  const runner = source.createQueryRunner();
  try {
    const [held] = (await runner.query(RESTORE_LOCK)) as { held: boolean }[];
    if (!held!.held) throw isRunning('DATABASE_URL');
    await runner.startTransaction();
    try {
      const keptAs = await moveAside(runner);
      await rebuild(runner, archive);
      await runner.commitTransaction();
      return keptAs;
    } catch (error) {
      await runner.rollbackTransaction();
      throw error;
    }
  } finally {
    await runner.release();
    await source.destroy();
  }
}

async function moveAside(runner: QueryRunner): Promise<string | undefined> {
  const names = await ownNames(runner);
  if (names.length === 0) return undefined;
  const [current] = (await runner.query('SELECT current_schema() AS "name"')) as { name: string }[];
  const schema = `${current!.name}_before_${stamp(new Date()).replaceAll('-', '_')}`;
  await runner.query(`CREATE SCHEMA "${schema}"`);
  for (const name of names) await runner.query(`ALTER TABLE "${name}" SET SCHEMA "${schema}"`);
  return schema;
}
