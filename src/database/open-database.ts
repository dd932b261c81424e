import { DataSource, type DataSourceOptions } from 'typeorm';

/**
 * Opens the database and brings its tables up to date.
 *
 * @param beforeUpdate sees the tables as they were, before anything of them is changed
 */
export async function openDatabase(
  options: DataSourceOptions,
  beforeUpdate: (source: DataSource) => Promise<void>,
): Promise<DataSource> {
  const source = new DataSource({ ...options, migrationsRun: false });
  await source.initialize();
  try {
    await beforeUpdate(source);
    await source.runMigrations();
  } catch (error) {
    await source.destroy();
    throw error;
  }
  return source;
}
