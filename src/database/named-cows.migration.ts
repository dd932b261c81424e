import type { MigrationInterface, QueryRunner, TableColumnOptions } from 'typeorm';
import { tableOfFarm } from './table-of-farm.js';

/** Cows with a name, each one of the head of a herd. */
export class NamedCows1796550000000 implements MigrationInterface {
  name = 'NamedCows1796550000000';

  async up(runner: QueryRunner): Promise<void> {
    const text = (name: string, length: number, isPrimary = false): TableColumnOptions => ({
      name,
      type: 'varchar',
      length: String(length),
      isPrimary,
    });
    await runner.createTable(
      tableOfFarm('cows', [
        text('id', 64, true),
        text('farmId', 36),
        text('herdId', 64),
        text('classId', 64),
        text('name', 80),
        { name: 'details', type: 'text' },
        { name: 'version', type: 'integer', default: 1 },
      ]),
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.dropTable('cows');
  }
}
