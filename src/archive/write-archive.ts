import { createHash } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { open } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { QueryRunner } from 'typeorm';
import { ZipFile } from 'yazl';
import {
  entryOf,
  FORMAT,
  FORMAT_VERSION,
  MANIFEST_ENTRY,
  PROGRAM_VERSION,
  type ArchiveRow,
  type Holding,
  type Manifest,
  type TableEntry,
} from './archive-format.js';
import { rowsIn } from './stored-rows.js';
import { migrationsIn, storedTables, type StoredTable } from './stored-table.js';

/** Text handed to the zip at once. */
const CHARACTERS_AT_ONCE = 60_000;

/**
 * Writes one farm or the whole database into a new file, and waits for the disk.
 *
 * It is a zip, because photos and other files can join the tables as entries of their own, and any
 * computer opens it; its tables are JSON lines, so that no table has to fit into memory.
 *
 * @param runner reads a snapshot of the database
 * @throws Error of the file system when the file is there already or cannot be written
 */
export async function writeArchive(
  file: string,
  runner: QueryRunner,
  of: { readonly farmId: string } | 'everything',
): Promise<Manifest> {
  const farmId = of === 'everything' ? undefined : of.farmId;
  const all = await storedTables(runner);
  const tables = farmId === undefined ? all : all.filter(belongsToFarm);
  const zip = new ZipFile();
  const entries: TableEntry[] = [];
  for (const table of tables) {
    zip.addReadStreamLazy(entryOf(table.name), (give) => {
      const all = rowsIn(runner, table, farmId);
      const rows = farmId === undefined ? all : withoutSecrets(table, all);
      const lines = jsonLines(table, rows, (entry) => entries.push(entry));
      give(null, Readable.from(lines, { objectMode: false }));
    });
  }
  const migrations = await migrationsIn(runner);
  let manifest: Manifest | undefined;
  zip.addReadStreamLazy(MANIFEST_ENTRY, (give) => {
    manifest = manifestOf(farmId === undefined ? 'everything' : 'farm', migrations, entries);
    give(null, Readable.from([`${JSON.stringify(manifest, undefined, 2)}\n`]));
  });
  zip.end();
  const output = zip.outputStream as Readable;
  // What goes wrong with an entry would otherwise leave the output open.
  zip.on('error', (error: Error) => output.destroy(error));
  await pipeline(output, createWriteStream(file, { flags: 'wx' }));
  await toDisk(file);
  return manifest!;
}

/** Whether a farm's archive holds this table: the farm itself, and all that names its farm. */
export const belongsToFarm = ({ name, columns }: StoredTable): boolean =>
  name === 'farms' || columns.some((column) => column.name === 'farmId');

/** What opens a farm to others stays in its database; it is made anew where it is asked for. */
const SECRETS = ['farms.calendarKey'];

async function* withoutSecrets(
  { name, columns }: StoredTable,
  rows: AsyncIterable<ArchiveRow>,
): AsyncGenerator<ArchiveRow> {
  const secrets = columns.filter((column) => SECRETS.includes(`${name}.${column.name}`));
  const nothing = Object.fromEntries(secrets.map((column) => [column.name, null]));
  for await (const row of rows) yield { ...row, ...nothing };
}

async function toDisk(file: string): Promise<void> {
  const handle = await open(file, 'r+');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

const manifestOf = (
  holds: Holding,
  migrations: readonly string[],
  tables: readonly TableEntry[],
): Manifest => ({
  format: FORMAT,
  formatVersion: FORMAT_VERSION,
  holds,
  program: PROGRAM_VERSION,
  madeAt: new Date().toISOString(),
  migrations,
  tables,
});

async function* jsonLines(
  { name }: StoredTable,
  rows: AsyncIterable<ArchiveRow>,
  done: (entry: TableEntry) => void,
): AsyncGenerator<Buffer> {
  const hash = createHash('sha256');
  let count = 0;
  let text = '';
  const flush = (): Buffer => {
    const bytes = Buffer.from(text);
    hash.update(bytes);
    text = '';
    return bytes;
  };
  for await (const row of rows) {
    text += `${JSON.stringify(row)}\n`;
    count++;
    if (CHARACTERS_AT_ONCE < text.length) yield flush();
  }
  if (text !== '') yield flush();
  done({ name, rows: count, sha256: hash.digest('hex') });
}
