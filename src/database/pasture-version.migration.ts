import type { MigrationInterface, QueryRunner } from 'typeorm';

/** A version of a farm's pasture choices, so that no save overwrites newer ones unseen. */
export class PastureVersion1796500000000 implements MigrationInterface {
  name = 'PastureVersion1796500000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      'ALTER TABLE "farms" ADD COLUMN "pastureVersion" integer NOT NULL DEFAULT 1',
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "farms" DROP COLUMN "pastureVersion"');
  }
}
