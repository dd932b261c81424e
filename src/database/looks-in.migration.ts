import type { MigrationInterface, QueryRunner } from 'typeorm';

/** How often a day somebody who is not of the household looks in. */
export class LooksIn1798000031000000 implements MigrationInterface {
  name = 'LooksIn1798000031000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "people" ADD COLUMN "looksIn" integer');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "people" DROP COLUMN "looksIn"');
  }
}
