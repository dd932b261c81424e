import type { DataSource, QueryRunner, Table, TableColumn } from 'typeorm';

/** A table as it is in the database: an archive knows nothing else, so none can be forgotten. */
export interface StoredTable {
  readonly name: string;
  readonly columns: readonly StoredColumn[];
  /** Columns of the primary key, in its order. */
  readonly key: readonly string[];
  /** Tables that its rows point to. */
  readonly pointsTo: readonly string[];
}

export interface StoredColumn {
  readonly name: string;
  readonly kind: 'text' | 'date' | 'number' | 'yes-no';
  /** Its text is JSON: a list or an object. */
  readonly isJson: boolean;
  readonly mayBeEmpty: boolean;
  readonly maxLength?: number;
}

const KINDS: readonly (readonly [pattern: RegExp, kind: StoredColumn['kind']])[] = [
  [/^bool/, 'yes-no'],
  [/^date$/, 'date'],
  [/^(small|big)?int|^double|^real$|^numeric|^decimal|^float/, 'number'],
  [/char|^text$|^datetime|^timestamp|^uuid$/, 'text'],
];

/** What says which changes a database has been through; it goes into the manifest instead. */
const MIGRATIONS_TABLE = 'migrations';

/**
 * Every table of this program, those before others that point to them.
 *
 * @param entitiesOf knows the entities; a connection that only reads or rebuilds may know none
 * @throws Error when a column is of a kind that an archive cannot hold yet
 */
export async function storedTables(
  runner: QueryRunner,
  entitiesOf: DataSource = runner.connection,
): Promise<StoredTable[]> {
  const names = (await ownNames(runner)).filter((name) => name !== MIGRATIONS_TABLE);
  const json = jsonColumns(entitiesOf);
  const places = await columnPlaces(runner);
  const tables = (await runner.getTables(names)).map((table) => storedTable(table, json, places));
  return pointedToFirst(tables.sort((a, b) => (a.name < b.name ? -1 : 1)));
}

/** The changes that a database has been through, oldest first; none where it was never used. */
export async function migrationsIn(runner: QueryRunner): Promise<string[]> {
  if (!(await runner.hasTable(MIGRATIONS_TABLE))) return [];
  const rows = (await runner.query(
    `SELECT "name" FROM "${MIGRATIONS_TABLE}" ORDER BY "id"`,
  )) as readonly { name: string }[];
  return rows.map(({ name }) => name);
}

/** Names of this program's tables. A file is its own; a schema of PostgreSQL may hold others too. */
export async function ownNames(runner: QueryRunner): Promise<string[]> {
  const isPostgres = runner.connection.options.type === 'postgres';
  const rows = (await runner.query(
    isPostgres
      ? 'SELECT "tablename" AS "name" FROM "pg_tables" WHERE "schemaname" = current_schema()'
      : `SELECT "name" FROM "sqlite_master" WHERE "type" = 'table' AND "name" NOT LIKE 'sqlite_%'`,
  )) as readonly { name: string }[];
  const names = rows.map(({ name }) => name);
  if (!isPostgres) return names;
  const known = new Set([
    MIGRATIONS_TABLE,
    ...runner.connection.entityMetadatas.map(({ tableName }) => tableName),
    ...(await namesOfFarmTables(runner)),
  ]);
  return names.filter((name) => known.has(name));
}

async function namesOfFarmTables(runner: QueryRunner): Promise<string[]> {
  const rows = (await runner.query(
    `SELECT "table_name" AS "name" FROM "information_schema"."columns"
     WHERE "table_schema" = current_schema() AND "column_name" = 'farmId'`,
  )) as readonly { name: string }[];
  return rows.map(({ name }) => name);
}

/**
 * Place of each column of PostgreSQL, as `table.column`: its catalog is read in whatever order the
 * planner likes that day, and one farm has to give one file. SQLite gives columns in their order.
 */
async function columnPlaces(runner: QueryRunner): Promise<ReadonlyMap<string, number>> {
  if (runner.connection.options.type !== 'postgres') return new Map();
  const rows = (await runner.query(
    `SELECT "table_name" AS "table", "column_name" AS "column", "ordinal_position"::int AS "place"
     FROM "information_schema"."columns" WHERE "table_schema" = current_schema()`,
  )) as readonly { table: string; column: string; place: number }[];
  return new Map(rows.map(({ table, column, place }) => [`${table}.${column}`, place]));
}

/** Columns that the entities read as JSON, as `table.column`; the database only knows text. */
const jsonColumns = ({ entityMetadatas }: DataSource): ReadonlySet<string> =>
  new Set(
    entityMetadatas.flatMap(({ tableName, columns }) =>
      columns
        .filter(({ type }) => type === 'simple-json')
        .map(({ databaseName }) => `${tableName}.${databaseName}`),
    ),
  );

function storedTable(
  table: Table,
  json: ReadonlySet<string>,
  places: ReadonlyMap<string, number>,
): StoredTable {
  const name = table.name.split('.').at(-1)!;
  const place = (column: TableColumn): number => places.get(`${name}.${column.name}`) ?? 0;
  const columns = table.columns.toSorted((a, b) => place(a) - place(b));
  return {
    name,
    columns: columns.map((column) => storedColumn(name, column, json)),
    key: columns.flatMap((column) => (column.isPrimary ? [column.name] : [])),
    pointsTo: table.foreignKeys.map((key) => key.referencedTableName.split('.').at(-1)!),
  };
}

function storedColumn(table: string, column: TableColumn, json: ReadonlySet<string>): StoredColumn {
  const kind = KINDS.find(([pattern]) => pattern.test(column.type.toLowerCase()))?.[1];
  if (!kind)
    throw new Error(`An archive cannot hold the ${column.type} of ${table}.${column.name} yet.`);
  const maxLength = Number(column.length);
  return {
    name: column.name,
    kind,
    isJson: json.has(`${table}.${column.name}`),
    mayBeEmpty: column.isNullable,
    ...(0 < maxLength ? { maxLength } : {}),
  };
}

function pointedToFirst(tables: readonly StoredTable[]): StoredTable[] {
  const sorted: StoredTable[] = [];
  let left = [...tables];
  while (0 < left.length) {
    const waits = (table: StoredTable): boolean =>
      table.pointsTo.some((name) => name !== table.name && left.some((t) => t.name === name));
    const ready = left.filter((table) => !waits(table));
    if (ready.length === 0)
      throw new Error(`Tables point to each other: ${left.map(({ name }) => name).join(', ')}.`);
    sorted.push(...ready);
    left = left.filter(waits);
  }
  return sorted;
}
