import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DataSource, type QueryRunner } from 'typeorm';
import type { ArchiveRow } from './archive-format.js';
import { migrateTo } from './bring-up-to-date.js';
import { whyNoRow } from './check-row.js';
import type { OpenArchive } from './open-archive.js';
import { refusedFile } from './refused-file.js';
import { insertRows, rowsIn } from './stored-rows.js';
import { storedTables, type StoredTable } from './stored-table.js';

/** Where rows come from: an archive, or a database that was made of one. */
export interface RowSource {
  readonly rows: (table: string) => AsyncIterable<ArchiveRow>;
}

/**
 * Makes an empty database what an archive holds: the tables as they were when it was made, their
 * rows, then every later change of the tables.
 *
 * @returns how many rows were read
 * @throws FieldError when the archive holds what no such database can
 */
export async function rebuild(runner: QueryRunner, archive: OpenArchive): Promise<number> {
  const { manifest, name } = archive;
  await migrateTo(runner, manifest.migrations.length);
  const tables = await storedTables(runner);
  const unknown = manifest.tables.find((entry) => !tables.some((t) => t.name === entry.name));
  if (unknown) throw noRow(name, unknown.name, 'the table is not known');
  let count = 0;
  const isOurs = !runner.isTransactionActive;
  if (isOurs) await runner.startTransaction();
  for (const table of tables)
    count += await insertRows(runner, table, checkedRows(archive, table, name));
  if (isOurs) await runner.commitTransaction();
  await migrateTo(runner, runner.connection.migrations.length);
  return count;
}

/** The rows of a table, each looked at first. */
export async function* checkedRows(
  source: RowSource,
  table: StoredTable,
  name: string,
): AsyncGenerator<ArchiveRow> {
  for await (const row of source.rows(table.name)) {
    const why = whyNoRow(table, row);
    if (why !== undefined) throw noRow(name, table.name, why);
    yield row;
  }
}

export const noRow = (name: string, table: string, why: string) =>
  refusedFile(
    name,
    `a row of ${table} cannot be used: ${why}`,
    'Nothing was read. Use another copy of it.',
  );

/** Brings an archive of an earlier program up to date in a database of its own, which then goes. */
export async function broughtUpToDate<T>(
  archive: OpenArchive,
  migrations: DataSource['options']['migrations'] & {},
  use: (rows: RowSource) => Promise<T>,
): Promise<T> {
  const folder = await mkdtemp(join(tmpdir(), 'broodfold-'));
  const scratch = new DataSource({
    type: 'better-sqlite3',
    database: join(folder, 'scratch.sqlite'),
    migrations,
  });
  try {
    await scratch.initialize();
    await scratch.query('PRAGMA synchronous = OFF');
    const runner = scratch.createQueryRunner();
    await rebuild(runner, archive);
    const tables = await storedTables(runner);
    return await use({
      rows: (name) =>
        rowsIn(
          runner,
          tables.find((t) => t.name === name)!,
        ),
    });
  } finally {
    if (scratch.isInitialized) await scratch.destroy();
    await rm(folder, { recursive: true, force: true });
  }
}
