import type { MigrationInterface, QueryRunner } from 'typeorm';
import { tableOfFarm } from './table-of-farm.js';

/** Where a place buys its feed. Feeds name one in their details. */
export class Suppliers1798000025000000 implements MigrationInterface {
  name = 'Suppliers1798000025000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.createTable(
      tableOfFarm('suppliers', [
        { name: 'id', type: 'varchar', length: '64', isPrimary: true },
        { name: 'farmId', type: 'varchar', length: '36' },
        { name: 'name', type: 'varchar', length: '80' },
        { name: 'details', type: 'text' },
        { name: 'version', type: 'integer', default: 1 },
      ]),
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.dropTable('suppliers');
  }
}
