import type { MigrationInterface, QueryRunner } from 'typeorm';

/** The hour at which a person's hours for the farm begin. */
export class StartingHours1795900000000 implements MigrationInterface {
  name = 'StartingHours1795900000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "people" ADD COLUMN "startH" text');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "people" DROP COLUMN "startH"');
  }
}
