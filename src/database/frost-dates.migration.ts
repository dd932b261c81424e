import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Whether a farm's frost dates are the usual or the safe ones. */
export class FrostDates1796700000000 implements MigrationInterface {
  name = 'FrostDates1796700000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "farms" ADD COLUMN "frostDatesAre" varchar(8)');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "farms" DROP COLUMN "frostDatesAre"');
  }
}
