import { DataSource, type DataSourceOptions } from 'typeorm';

/** A database that this program must not touch, in a sentence that says what to do. */
export class DatabaseRefused extends Error {}

/**
 * Opens the database and brings its tables up to date.
 *
 * @param beforeUpdate sees the tables as they were, before anything of them is changed
 * @throws DatabaseRefused when a later program has changed its tables, or when its file is damaged
 */
export async function openDatabase(
  options: DataSourceOptions,
  beforeUpdate: (source: DataSource) => Promise<void>,
): Promise<DataSource> {
  const source = new DataSource({ ...options, migrationsRun: false });
  await source.initialize();
  try {
    await refuseDamaged(source);
    await refuseLater(source);
    await beforeUpdate(source);
    await source.runMigrations();
  } catch (error) {
    await source.destroy();
    throw error;
  }
  return source;
}

/** Damage is found before more is written on top of it. */
async function refuseDamaged(source: DataSource): Promise<void> {
  if (source.options.type !== 'better-sqlite3') return;
  const [first] = (await source.query('PRAGMA quick_check(1)')) as { quick_check: string }[];
  if (first === undefined || first.quick_check === 'ok') return;
  throw Object.assign(new Error(first.quick_check), { code: 'SQLITE_CORRUPT' });
}

async function refuseLater(source: DataSource): Promise<void> {
  const runner = source.createQueryRunner();
  try {
    if (!(await runner.hasTable('migrations'))) return;
    const done = (await runner.query('SELECT "name" FROM "migrations"')) as { name: string }[];
    const known = new Set(
      source.migrations.map(({ name, constructor }) => name ?? constructor.name),
    );
    const unknown = done.find(({ name }) => !known.has(name));
    if (!unknown) return;
    throw new DatabaseRefused(
      `The database was made by a later Broodfold (it knows of ${unknown.name}, which this one does not). Start that later program, or bring back a copy made before the update. Nothing was changed.`,
    );
  } finally {
    await runner.release();
  }
}
