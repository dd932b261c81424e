import type { MigrationInterface, QueryRunner, TableColumnOptions } from 'typeorm';
import { tableOfFarm } from './table-of-farm.js';

/** Plans kept from day to day, looks at the ground, hand-overs, and the soil of the garden. */
export class SeasonRecords1795800000000 implements MigrationInterface {
  name = 'SeasonRecords1795800000000';

  async up(runner: QueryRunner): Promise<void> {
    const text = (name: string, length: number, isPrimary = false): TableColumnOptions => ({
      name,
      type: 'varchar',
      length: String(length),
      isPrimary,
    });
    const date = (name: string, isPrimary = false): TableColumnOptions => ({
      name,
      type: 'date',
      isPrimary,
    });
    await runner.query('ALTER TABLE "farms" ADD COLUMN "gardenSoilId" varchar(64)');
    await runner.createTable(
      tableOfFarm(
        'kept_plans',
        [text('farmId', 36, true), date('plannedOn', true), { name: 'jobs', type: 'text' }],
        { isFoundByKey: true },
      ),
    );
    await runner.createTable(
      tableOfFarm(
        'ground_looks',
        [text('farmId', 36, true), date('date', true), { name: 'isWorkable', type: 'boolean' }],
        { isFoundByKey: true },
      ),
    );
    await runner.createTable(
      tableOfFarm('handovers', [
        text('id', 64, true),
        text('farmId', 36),
        date('firstDay'),
        { name: 'details', type: 'text' },
      ]),
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const name of ['handovers', 'ground_looks', 'kept_plans']) await runner.dropTable(name);
    await runner.query('ALTER TABLE "farms" DROP COLUMN "gardenSoilId"');
  }
}
