import { setImmediate } from 'node:timers/promises';
import type { QueryRunner } from 'typeorm';
import type { ArchiveRow } from './archive-format.js';
import type { StoredColumn, StoredTable } from './stored-table.js';

/** Rows read or written at once: few enough that other requests come in between. */
const ROWS_AT_ONCE = 250;
/** Rows read at once of tables whose rows are large. */
const LARGE_ROWS: Readonly<Record<string, number>> = { photos: 10 };
/** Large rows go in smaller groups: characters of text written at once. */
const TEXT_AT_ONCE = 500_000;

/** The rows of a table in the order of its key; of one farm, or all. */
export async function* rowsIn(
  runner: QueryRunner,
  table: StoredTable,
  farmId?: string,
): AsyncGenerator<ArchiveRow> {
  const quoted = table.key.map((name) => `"${table.name}"."${name}"`).join(', ');
  const owner = table.name === 'farms' ? 'id' : 'farmId';
  const atOnce = LARGE_ROWS[table.name] ?? ROWS_AT_ONCE;
  let last: ArchiveRow | undefined;
  for (;;) {
    const values: unknown[] = [];
    const mark = markIn(runner, values);
    const conditions = [
      ...(farmId === undefined ? [] : [`"${owner}" = ${mark(farmId)}`]),
      ...(last ? [`(${quoted}) > (${table.key.map((name) => mark(last![name])).join(', ')})`] : []),
    ];
    const where = conditions.length === 0 ? '' : `WHERE ${conditions.join(' AND ')}`;
    const rows = (await runner.query(
      `SELECT ${table.columns.map((column) => read(runner, column)).join(', ')}
       FROM "${table.name}" ${where} ORDER BY ${quoted} LIMIT ${atOnce}`,
      values,
    )) as readonly Record<string, unknown>[];
    for (const row of rows) yield plainRow(table, row);
    if (rows.length < atOnce) return;
    last = rows.at(-1);
    await setImmediate();
  }
}

/** Writes rows into a table, a group at a time. @returns how many */
export async function insertRows(
  runner: QueryRunner,
  table: StoredTable,
  rows: AsyncIterable<ArchiveRow>,
): Promise<number> {
  let count = 0;
  for await (const group of grouped(rows)) {
    const values: unknown[] = [];
    const mark = markIn(runner, values);
    const lists = group.map(
      (row) => `(${table.columns.map(({ name }) => mark(storedValue(row[name]))).join(', ')})`,
    );
    await runner.query(
      `INSERT INTO "${table.name}" (${table.columns.map(({ name }) => `"${name}"`).join(', ')})
       VALUES ${lists.join(', ')}`,
      values,
    );
    count += group.length;
    await setImmediate();
  }
  return count;
}

async function* grouped(rows: AsyncIterable<ArchiveRow>): AsyncGenerator<ArchiveRow[]> {
  let group: ArchiveRow[] = [];
  let size = 0;
  for await (const row of rows) {
    group.push(row);
    size += JSON.stringify(row).length;
    if (ROWS_AT_ONCE <= group.length || TEXT_AT_ONCE <= size) {
      yield group;
      group = [];
      size = 0;
    }
  }
  if (0 < group.length) yield group;
}

/** How a value is handed to a statement, which differs between the databases. */
function markIn(runner: QueryRunner, values: unknown[]): (value: unknown) => string {
  const isPostgres = runner.connection.options.type === 'postgres';
  return (value) => {
    values.push(value);
    return isPostgres ? `$${values.length}` : '?';
  };
}

/** PostgreSQL's driver would make dates of days, in the time zone of the machine. */
const read = (runner: QueryRunner, { name, kind }: StoredColumn): string =>
  runner.connection.options.type === 'postgres' && (kind === 'date' || kind === 'text')
    ? `"${name}"::text AS "${name}"`
    : `"${name}"`;

const plainRow = (table: StoredTable, row: Record<string, unknown>): ArchiveRow =>
  Object.fromEntries(table.columns.map(({ name, kind }) => [name, plainValue(kind, row[name])]));

function plainValue(kind: StoredColumn['kind'], value: unknown): unknown {
  if (value === null || value === undefined) return null;
  if (kind === 'yes-no') return value === true || value === 1;
  if (kind === 'number') return Number(value);
  return kind === 'text' ? jsonInText(String(value)) : String(value);
}

/** JSON that is kept as text, as JSON, where that gives back the very same text. */
function jsonInText(text: string): unknown {
  if (!/^[{[]/.test(text)) return text;
  try {
    const value: unknown = JSON.parse(text);
    return JSON.stringify(value) === text ? value : text;
  } catch {
    return text;
  }
}

const storedValue = (value: unknown): unknown =>
  typeof value === 'object' && value !== null ? JSON.stringify(value) : (value ?? null);
