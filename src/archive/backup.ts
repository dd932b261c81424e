import { existsSync } from 'node:fs';
import { open, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { DataSource, QueryRunner } from 'typeorm';
import { makeFolder } from '../common/make-folder.js';
import type { Manifest } from './archive-format.js';
import { OpenArchive } from './open-archive.js';
import { refusedFile } from './refused-file.js';
import { inSnapshot } from './snapshot.js';
import { migrationsIn } from './stored-table.js';
import { writeArchive } from './write-archive.js';

/** Where copies go unless told otherwise: named for the moment, so that none is in another's way. */
export const backupFile = (dataFolder: string, what: string, now: Date): string =>
  join(dataFolder, 'backups', `broodfold-${what}${stamp(now)}.zip`);

/** 2027-04-21-093005, UTC. */
export const stamp = (now: Date): string =>
  now.toISOString().slice(0, 19).replace('T', '-').replaceAll(':', '');

/**
 * Copies the whole database into a new file while others go on writing. The copy is read through
 * once before it gets its name, and is on the disk when it has it.
 *
 * @throws FieldError when there is such a file already, nothing to copy, or a damaged database
 */
export async function makeBackup(source: DataSource, file: string): Promise<Manifest> {
  if (existsSync(file))
    throw refusedFile(file, 'there is such a file already', 'Give another name.');
  makeFolder(dirname(file));
  const unfinished = `${file}.unfinished`;
  await rm(unfinished, { force: true });
  try {
    const manifest = await inSnapshot(source, async (runner) => {
      await checkWhole(runner, file);
      return writeArchive(unfinished, runner, 'everything');
    });
    await readThrough(unfinished, manifest);
    await rename(unfinished, file);
    await folderToDisk(dirname(file));
    return manifest;
  } catch (error) {
    await rm(unfinished, { force: true });
    throw error;
  }
}

/** A name is on the disk when its folder is. */
export async function folderToDisk(folder: string): Promise<void> {
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

async function checkWhole(runner: QueryRunner, file: string): Promise<void> {
  if ((await migrationsIn(runner)).length === 0)
    throw refusedFile(file, 'there is nothing to copy yet', 'Start Broodfold once first.');
  const found = await faultsIn(runner);
  if (found !== undefined)
    throw refusedFile(
      file,
      `the database is damaged (${found.slice(0, 200)}), so no copy was made`,
      'Keep all files of the data folder, and bring back your last copy.',
    );
}

/** What SQLite finds wrong in a database; undefined when it is whole. PostgreSQL watches itself. */
export async function faultsIn(runner: QueryRunner): Promise<string | undefined> {
  if (runner.connection.options.type !== 'better-sqlite3') return undefined;
  const [check] = (await runner.query('PRAGMA integrity_check(1)')) as {
    integrity_check: string;
  }[];
  if (check?.integrity_check !== 'ok') return check?.integrity_check ?? 'no answer';
  const [orphan] = (await runner.query('PRAGMA foreign_key_check')) as { table: string }[];
  return orphan && `a row of ${orphan.table} belongs to nothing`;
}

async function readThrough(file: string, { holds, migrations }: Manifest): Promise<void> {
  const archive = await OpenArchive.open(file, { name: file, holds, migrations });
  try {
    await archive.check();
  } finally {
    archive.close();
  }
}
