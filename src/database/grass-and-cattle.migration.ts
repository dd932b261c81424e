import type { MigrationInterface, QueryRunner, TableColumnOptions } from 'typeorm';
import { tableOfFarm } from './table-of-farm.js';

/** Paddocks, herds and readings of grass; rain and pasture choices of a farm. */
export class GrassAndCattle1795600000000 implements MigrationInterface {
  name = 'GrassAndCattle1795600000000';

  async up(runner: QueryRunner): Promise<void> {
    // Plain SQL: the schema builder would copy the farms into a new table on SQLite, and dropping
    // the old one would take everything that belongs to them along.
    await runner.query('ALTER TABLE "farms" ADD COLUMN "monthlyRainMm" text');
    await runner.query(`ALTER TABLE "farms" ADD COLUMN "pasture" text NOT NULL DEFAULT '{}'`);
    const text = (name: string, length: number, isPrimary = false): TableColumnOptions => ({
      name,
      type: 'varchar',
      length: String(length),
      isPrimary,
    });
    const own = [text('id', 64, true), text('farmId', 36)];
    const details: TableColumnOptions = { name: 'details', type: 'text' };
    await runner.createTable(tableOfFarm('paddocks', [...own, text('name', 80), details]));
    await runner.createTable(tableOfFarm('herds', [...own, text('name', 80), details]));
    await runner.createTable(
      tableOfFarm('grass_readings', [
        ...own,
        text('paddockId', 64),
        { name: 'date', type: 'date' },
        { name: 'heightCm', type: 'double precision' },
      ]),
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const name of ['grass_readings', 'herds', 'paddocks']) await runner.dropTable(name);
    await runner.query('ALTER TABLE "farms" DROP COLUMN "pasture"');
    await runner.query('ALTER TABLE "farms" DROP COLUMN "monthlyRainMm"');
  }
}
