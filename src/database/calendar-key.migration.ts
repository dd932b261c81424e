import type { MigrationInterface, QueryRunner } from 'typeorm';

/** The key in the address of a farm's calendar. */
export class CalendarKey1796400000000 implements MigrationInterface {
  name = 'CalendarKey1796400000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "farms" ADD COLUMN "calendarKey" varchar(43)');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "farms" DROP COLUMN "calendarKey"');
  }
}
