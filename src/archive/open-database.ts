import { DataSource, type DataSourceOptions } from 'typeorm';
import { copyBeforeUpdate } from './backup.js';
import { dataFolder } from '../database/data-source.js';

/** Opens the database and brings its tables up to date; what was there before is copied first. */
export async function openDatabase(options?: DataSourceOptions): Promise<DataSource> {
  if (!options) throw new Error('openDatabase needs the options of a data source.');
  const source = new DataSource({ ...options, migrationsRun: false });
  await source.initialize();
  try {
    await copyBeforeUpdate(source, dataFolder());
    await source.runMigrations();
  } catch (error) {
    await source.destroy();
    throw error;
  }
  return source;
}
