import type { QueryRunner } from 'typeorm';

export type Row = Readonly<Record<string, unknown>>;
export type Details = Record<string, unknown>;

/** Values of a statement are named $1, $2 … on PostgreSQL, and are question marks on SQLite. */
const placesFor = (runner: QueryRunner, count: number): string[] =>
  Array.from({ length: count }, (_, i) =>
    runner.connection.options.type === 'postgres' ? `$${i + 1}` : '?',
  );

/** Puts a row into a table, by the names of its columns. */
export async function insertRow(runner: QueryRunner, table: string, row: Row): Promise<void> {
  const names = Object.keys(row);
  const places = placesFor(runner, names.length);
  await runner.query(
    `INSERT INTO "${table}" (${names.map((name) => `"${name}"`).join(', ')}) VALUES (${places.join(', ')})`,
    names.map((name) => row[name]),
  );
}

/** Writes the details of a row anew. */
export async function setDetails(
  runner: QueryRunner,
  table: string,
  id: unknown,
  details: Details,
): Promise<void> {
  const [first, second] = placesFor(runner, 2);
  await runner.query(`UPDATE "${table}" SET "details" = ${first} WHERE "id" = ${second}`, [
    JSON.stringify(details),
    id,
  ]);
}

/**
 * Raises the revision of a farm, by nothing to lock its row alone, and gives it as it is then: one
 * way there and back. Undefined where there is no such farm.
 */
export async function raiseRevision(
  runner: QueryRunner,
  farmId: string,
  by: number,
): Promise<number | undefined> {
  const [first, second] = placesFor(runner, 2);
  const { records } = await runner.query(
    `UPDATE "farms" SET "revision" = "revision" + ${first} WHERE "id" = ${second} RETURNING "revision"`,
    [by, farmId],
    true,
  );
  return (records as { revision: number }[])[0]?.revision;
}
