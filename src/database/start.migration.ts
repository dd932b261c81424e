import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Which figures of a farm are estimates, what nobody has said yet, and who of the people is a child. */
export class Start1798000005000000 implements MigrationInterface {
  name = 'Start1798000005000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "farms" ADD COLUMN "estimated" text');
    await runner.query('ALTER TABLE "farms" ADD COLUMN "assumed" text');
    await runner.query('ALTER TABLE "people" ADD COLUMN "assumed" text');
    await runner.query('ALTER TABLE "people" ADD COLUMN "isChild" boolean');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "people" DROP COLUMN "isChild"');
    await runner.query('ALTER TABLE "people" DROP COLUMN "assumed"');
    await runner.query('ALTER TABLE "farms" DROP COLUMN "assumed"');
    await runner.query('ALTER TABLE "farms" DROP COLUMN "estimated"');
  }
}
