import type { MigrationInterface, QueryRunner } from 'typeorm';

/** The country and region whose public holidays a farm keeps. */
export class Holidays1797005000000 implements MigrationInterface {
  name = 'Holidays1797005000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "farms" ADD COLUMN "country" varchar(2)');
    await runner.query('ALTER TABLE "farms" ADD COLUMN "region" varchar(8)');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "farms" DROP COLUMN "region"');
    await runner.query('ALTER TABLE "farms" DROP COLUMN "country"');
  }
}
