import { existsSync } from 'node:fs';
import { copyFile, open, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';
import { DataSource, type DataSourceOptions } from 'typeorm';
import { makeFolder } from '../common/make-folder.js';
import { faultsIn, folderToDisk, stamp } from './backup.js';
import type { OpenArchive } from './open-archive.js';
import { rebuild } from './rebuild.js';
import { isRunning } from './is-running.js';

type SqliteOptions = Extract<DataSourceOptions, { type: 'better-sqlite3' }>;

/** What SQLite keeps beside a database. Left beside another one, they would be read into it. */
const BESIDE = ['-wal', '-shm', '-journal'];
/** Another copy that is being made may be waited for. */
const WAIT_MS = 1000;

/**
 * Puts an archive in the place of a SQLite file: it is built beside it, and takes its name in one
 * step when it is whole and on the disk.
 *
 * @returns the name under which the old file is kept
 */
export async function restoreSqlite(
  { database, ...options }: SqliteOptions,
  archive: OpenArchive,
): Promise<string | undefined> {
  makeFolder(dirname(database));
  const isThere = existsSync(database);
  const old = isThere && (await isSqlite(database)) ? await holdOld(database) : undefined;
  const built = `${database}.restoring`;
  try {
    await removeAll(built);
    await build({ ...options, database: built }, archive);
    const keptAs = isThere ? await keepAside(database) : undefined;
    for (const end of BESIDE) await rm(`${database}${end}`, { force: true });
    await rename(built, database);
    await folderToDisk(dirname(database));
    return keptAs;
  } finally {
    await removeAll(built);
    if (old?.isInitialized) await old.destroy();
  }
}

/**
 * Holds the old file, so that nobody opens it until it is replaced. What a killed program left in
 * its log is written into it first, so that the file by itself is the whole old state.
 *
 * @throws FieldError when somebody has it open
 */
async function holdOld(database: string): Promise<DataSource> {
  const old = new DataSource({
    type: 'better-sqlite3',
    database,
    fileMustExist: true,
    timeout: WAIT_MS,
  });
  try {
    await old.initialize();
    await old.query('PRAGMA journal_mode = DELETE');
    await old.query('BEGIN EXCLUSIVE');
  } catch (error) {
    const code = codeOf(error);
    // A damaged file cannot be held. It is put aside with its log as it is.
    if (!/^SQLITE_(BUSY|LOCKED|CORRUPT|NOTADB)/.test(code)) throw error;
    if (old.isInitialized) await old.destroy();
    if (/^SQLITE_(BUSY|LOCKED)/.test(code)) throw isRunning(database);
  }
  return old;
}

/** Opening what is no database would throw away the log beside it, which may be worth something. */
async function isSqlite(database: string): Promise<boolean> {
  const file = await open(database);
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(16), 0, 16, 0);
    return bytesRead === 0 || buffer.toString('latin1') === 'SQLite format 3\0';
  } finally {
    await file.close();
  }
}

const codeOf = (error: unknown): string => {
  const { driverError, code } = error as { driverError?: { code?: unknown }; code?: unknown };
  return String(driverError?.code ?? code);
};

async function build(options: SqliteOptions, archive: OpenArchive): Promise<void> {
  const source = new DataSource({ ...options, migrationsRun: false });
  await source.initialize();
  try {
    // Nothing is promised before the whole file goes to the disk below.
    await source.query('PRAGMA synchronous = OFF');
    const runner = source.createQueryRunner();
    await rebuild(runner, archive);
    const found = await faultsIn(runner);
    if (found !== undefined) throw new Error(`The database that was built is damaged: ${found}.`);
    await source.query('PRAGMA journal_mode = DELETE');
  } finally {
    await source.destroy();
  }
  await toDisk(options.database);
}

async function keepAside(database: string): Promise<string> {
  const aside = database.replace(/(\.sqlite)?$/, `-before-${stamp(new Date())}$1`);
  for (const end of ['', ...BESIDE]) {
    if (!existsSync(`${database}${end}`)) continue;
    await copyFile(`${database}${end}`, `${aside}${end}`);
    await toDisk(`${aside}${end}`);
  }
  await folderToDisk(dirname(database));
  return aside;
}

async function toDisk(file: string): Promise<void> {
  const handle = await open(file, 'r+');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

async function removeAll(database: string): Promise<void> {
  for (const end of ['', ...BESIDE]) await rm(`${database}${end}`, { force: true });
}
