import { readdir, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
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
  const file = backupFile(dataFolder, BEFORE_UPDATE, new Date());
  await makeBackup(source, file);
  await removeOldCopies(dirname(file));
}

const BEFORE_UPDATE = 'before-update-';
/** Copies made before updates that are kept; nobody asked for the older ones. */
const KEPT_COPIES = 5;

/** Removes the oldest copies made before updates. Any other file in the folder is somebody's own. */
async function removeOldCopies(folder: string): Promise<void> {
  const named = new RegExp(`^broodfold-${BEFORE_UPDATE}\\d{4}-\\d\\d-\\d\\d-\\d{6}\\.zip$`);
  // The moment in their names puts them in order.
  const copies = (await readdir(folder)).filter((name) => named.test(name)).sort();
  for (const name of copies.slice(0, -KEPT_COPIES)) await rm(join(folder, name));
}
