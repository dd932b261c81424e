import { MigrationExecutor, type DataSource, type QueryRunner } from 'typeorm';

/** Names of the changes of the database that this program knows, oldest first. */
export const knownMigrations = ({ migrations }: DataSource): string[] =>
  migrations.map((migration) => migration.name ?? migration.constructor.name);

/**
 * Brings a database through the first changes that this program knows, in the caller's transaction
 * if there is one.
 *
 * @param count how many of them it has been through afterward
 */
export async function migrateTo(runner: QueryRunner, count: number): Promise<void> {
  const { connection } = runner;
  const some = Object.create(connection, {
    migrations: { value: connection.migrations.slice(0, count) },
  }) as DataSource;
  const executor = new MigrationExecutor(some, runner);
  if (runner.isTransactionActive) executor.transaction = 'none';
  await executor.executePendingMigrations();
}
