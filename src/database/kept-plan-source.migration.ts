import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What a kept plan of the work was made from, so that the same is not planned anew. */
export class KeptPlanSource1798000020000000 implements MigrationInterface {
  name = 'KeptPlanSource1798000020000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "kept_plans" ADD COLUMN "madeFor" varchar(16)');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "kept_plans" DROP COLUMN "madeFor"');
  }
}
