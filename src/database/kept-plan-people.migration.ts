import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Who had hours when a plan of the work was kept, so that others make it be looked at anew. */
export class KeptPlanPeople1798000026000000 implements MigrationInterface {
  name = 'KeptPlanPeople1798000026000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "kept_plans" ADD COLUMN "madeBy" varchar(16)');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "kept_plans" DROP COLUMN "madeBy"');
  }
}
