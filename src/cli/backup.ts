import 'reflect-metadata';
import { existsSync, statSync } from 'node:fs';
import { DataSource, type DataSourceOptions } from 'typeorm';
import { backupFile, makeBackup } from '../archive/backup.js';
import { refusedFile } from '../archive/refused-file.js';
import { dataFolder, dataSourceOptions } from '../database/data-source.js';
import { rowsText, runCopying } from './copying.js';

const USAGE = `Copies the whole database into one file, while Broodfold may go on running.

  npm run backup                a new file in the folder backups beside the database
  npm run backup -- FILE.zip    a file of your own choice

It uses the same DATA_DIR or DATABASE_URL as npm start. Bring it back with npm run restore.`;

// From source, as the plans are: a copy can be made before an update is built, and when none builds.
await runCopying(USAGE, async ([given]) => {
  const file = given ?? backupFile(dataFolder(), '', new Date());
  const source = new DataSource(readOnly(dataSourceOptions()));
  await source.initialize();
  try {
    const { tables } = await makeBackup(source, file);
    const size = (statSync(file).size / 1e6).toFixed(1);
    return `Copied ${rowsText(tables)} to ${file} (${size} MB).`;
  } finally {
    await source.destroy();
  }
});

/** The service may be writing: this program changes nothing. */
function readOnly(options: DataSourceOptions): DataSourceOptions {
  if (options.type !== 'better-sqlite3') return { ...options, migrationsRun: false };
  const { database, entities, migrations } = options;
  if (!existsSync(database))
    throw refusedFile(database, 'there is no such file', 'Set DATA_DIR to the folder it lies in.');
  return {
    type: options.type,
    database,
    readonly: true,
    entities: entities!,
    migrations: migrations!,
  };
}
