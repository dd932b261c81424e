import { randomUUID } from 'node:crypto';
import { QueryFailedError, type DataSource, type EntityManager } from 'typeorm';
import type { ArchiveRow } from './archive-format.js';
import { knownMigrations } from './bring-up-to-date.js';
import { OpenArchive } from './open-archive.js';
import { broughtUpToDate, checkedRows, noRow, type RowSource } from './rebuild.js';
import { refusedFile } from './refused-file.js';
import { withNewIds } from './renew-ids.js';
import { inSnapshot } from './snapshot.js';
import { insertRows } from './stored-rows.js';
import { storedTables, type StoredTable } from './stored-table.js';
import { belongsToFarm } from './write-archive.js';

/** The part of a request that the file came in. */
const NAME = 'file';

/** The database a farm is read into, and how something new is written there in one transaction. */
export interface FarmReader {
  readonly source: DataSource;
  readonly write: <T>(work: (manager: EntityManager) => Promise<T>) => Promise<T>;
}

/**
 * Reads a farm's archive into a new farm, all or nothing.
 *
 * @returns the id of the new farm
 * @throws FieldError when the file is not a whole archive of a farm that this program understands
 */
export async function readFarm(reader: FarmReader, path: string): Promise<string> {
  const { source } = reader;
  const migrations = knownMigrations(source);
  const archive = await OpenArchive.open(path, { name: NAME, holds: 'farm', migrations });
  try {
    const { length } = archive.manifest.migrations;
    return length === migrations.length
      ? await addFarm(reader, archive)
      : await broughtUpToDate(archive, source.options.migrations!, (rows) => addFarm(reader, rows));
  } catch (error) {
    if (!(error instanceof QueryFailedError)) throw error;
    // A lost database or a full disk has a code of its own kind; the rest is about the rows.
    if (!isAboutRows(error)) throw error;
    throw noRow(NAME, 'the farm', 'the database does not take it');
  } finally {
    archive.close();
  }
}

async function addFarm({ source, write }: FarmReader, rows: RowSource): Promise<string> {
  const all = await inSnapshot(source, (runner) => storedTables(runner, source));
  const tables = all.filter(belongsToFarm);
  const { farmId, newIds } = await lookThrough(rows, tables);
  return write(async (manager) => {
    for (const table of tables)
      await insertRows(manager.queryRunner!, table, renewedRows(rows, table, newIds));
    return newIds.get(farmId)!;
  });
}

/** Looks at every row before the first is written. */
async function lookThrough(
  rows: RowSource,
  tables: readonly StoredTable[],
): Promise<{ farmId: string; newIds: Map<string, string> }> {
  const newIds = new Map<string, string>();
  let farmId: string | undefined;
  for (const table of tables) {
    const ids: string[] = [];
    for await (const row of checkedRows(rows, table, NAME)) {
      const owner = String(table.name === 'farms' ? row['id'] : row['farmId']);
      farmId ??= owner;
      if (owner !== farmId) throw noRow(NAME, table.name, 'it belongs to another farm');
      if (table.key.join() === 'id') ids.push(String(row['id']));
    }
    if (table.name === 'farms' && ids.length !== 1)
      throw refusedFile(NAME, `it holds ${ids.length} farms`, 'Choose a file that holds one farm.');
    // What is listed by its id stays in its order, and a plan may follow that order.
    const made = ids.map(() => randomUUID()).sort();
    ids.forEach((id, i) => newIds.set(id, made[i]!));
  }
  return { farmId: farmId!, newIds };
}

async function* renewedRows(
  rows: RowSource,
  { name }: StoredTable,
  newIds: ReadonlyMap<string, string>,
): AsyncGenerator<ArchiveRow> {
  for await (const row of rows.rows(name)) yield withNewIds(row, newIds);
}

/** SQLite's constraints and PostgreSQL's classes 22 and 23: values and keys that are not taken. */
const isAboutRows = ({ driverError }: QueryFailedError): boolean =>
  /^(SQLITE_CONSTRAINT|SQLITE_MISMATCH|2[23]\w{3}$)/.test(
    String((driverError as { code?: unknown }).code),
  );
