import type { MigrationInterface, QueryRunner, TableColumnOptions } from 'typeorm';
import { tableOfFarm } from './table-of-farm.js';

/** Hours of people, work of the household's own, and what became of work. */
export class HouseholdWork1795700000000 implements MigrationInterface {
  name = 'HouseholdWork1795700000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "people" ADD COLUMN "hoursByWeekday" text');
    const text = (name: string, length: number, isPrimary = false): TableColumnOptions => ({
      name,
      type: 'varchar',
      length: String(length),
      isPrimary,
    });
    const details: TableColumnOptions = { name: 'details', type: 'text' };
    await runner.createTable(
      tableOfFarm('jobs', [text('id', 64, true), text('farmId', 36), text('name', 80), details]),
    );
    await runner.createTable(
      tableOfFarm('work_marks', [text('farmId', 36, true), text('key', 200, true), details], {
        isFoundByKey: true,
      }),
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const name of ['work_marks', 'jobs']) await runner.dropTable(name);
    await runner.query('ALTER TABLE "people" DROP COLUMN "hoursByWeekday"');
  }
}
