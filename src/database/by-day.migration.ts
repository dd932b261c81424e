import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Whether somebody is at home or out by day on weekdays. */
export class ByDay1798000016000000 implements MigrationInterface {
  name = 'ByDay1798000016000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "people" ADD COLUMN "byDay" varchar(8)');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "people" DROP COLUMN "byDay"');
  }
}
