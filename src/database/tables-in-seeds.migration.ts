import { Table, type MigrationInterface, type QueryRunner } from 'typeorm';

/** Published tables are read from seeds/ alone: the copy in the database was never read. */
export class TablesInSeeds1795950000000 implements MigrationInterface {
  name = 'TablesInSeeds1795950000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.dropTable('published_tables');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.createTable(
      new Table({
        name: 'published_tables',
        columns: [
          { name: 'name', type: 'varchar', length: '40', isPrimary: true },
          { name: 'sha256', type: 'varchar', length: '64' },
          { name: 'content', type: 'text' },
        ],
      }),
    );
  }
}
