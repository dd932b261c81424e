import type { DataSource } from 'typeorm';
import { knownMigrations } from './bring-up-to-date.js';
import { migrationsIn } from './stored-table.js';

/** Copies a database that is about to be changed by a newer program; one that is new has nothing. */
export async function copyBeforeUpdate(source: DataSource, dataFolder: string): Promise<void> {
  const runner = source.createQueryRunner();
  const done = await migrationsIn(runner).finally(() => runner.release());
  const isUpToDate = knownMigrations(source).every((name) => done.includes(name));
  if (done.length === 0 || isUpToDate) return;
  // Loaded only here: most starts have nothing to copy.
  const { backupFile, makeBackup } = await import('./backup.js');
  await makeBackup(source, backupFile(dataFolder, 'before-update-', new Date()));
}
