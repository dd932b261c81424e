import pg from 'pg';

/**
 * Runs a part of the bench on SQLite; where TEST_DATABASE_URL names a database of PostgreSQL, on that
 * as well, in a schema of its own that is gone afterwards.
 *
 * @param schema its name
 * @param bench of the name of the database and what to add to the environment of the program
 */
export async function onBoth(schema, bench) {
  await bench('SQLite', {});
  const url = process.env.TEST_DATABASE_URL;
  if (!url) return;
  const client = new pg.Client(url);
  await client.connect();
  await client.query(`DROP SCHEMA IF EXISTS ${schema} CASCADE; CREATE SCHEMA ${schema}`);
  const own = new URL(url);
  own.searchParams.set('options', `-c search_path=${schema}`);
  await bench('PostgreSQL', { DATABASE_URL: own.href.replaceAll('+', '%20') });
  await client.query(`DROP SCHEMA ${schema} CASCADE`);
  await client.end();
}
