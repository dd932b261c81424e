import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What a farm may process and sell in a calendar year. */
export class YearLimits1798000030000000 implements MigrationInterface {
  name = 'YearLimits1798000030000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "farms" ADD COLUMN "yearLimits" text');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "farms" DROP COLUMN "yearLimits"');
  }
}
