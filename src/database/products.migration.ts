import type { MigrationInterface, QueryRunner } from 'typeorm';
import { tableOfFarm } from './table-of-farm.js';

/** What a place buys, and at what price. Prices typed into batches stay in their batches. */
export class Products1797007000000 implements MigrationInterface {
  name = 'Products1797007000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.createTable(
      tableOfFarm('products', [
        { name: 'id', type: 'varchar', length: '64', isPrimary: true },
        { name: 'farmId', type: 'varchar', length: '36' },
        { name: 'kind', type: 'varchar', length: '16' },
        { name: 'name', type: 'varchar', length: '80' },
        { name: 'details', type: 'text' },
        { name: 'version', type: 'integer', default: 1 },
      ]),
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.dropTable('products');
  }
}
