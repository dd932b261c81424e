import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Tables whose rows people edit. */
const EDITED = [
  'farms',
  'facilities',
  'people',
  'batches',
  'paddocks',
  'herds',
  'jobs',
  'handovers',
];

/** A version of every row that people edit, so that no save overwrites a newer one unseen. */
export class Versions1796000000000 implements MigrationInterface {
  name = 'Versions1796000000000';

  async up(runner: QueryRunner): Promise<void> {
    for (const table of EDITED) {
      await runner.query(`ALTER TABLE "${table}" ADD COLUMN "version" integer NOT NULL DEFAULT 1`);
    }
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const table of EDITED) {
      await runner.query(`ALTER TABLE "${table}" DROP COLUMN "version"`);
    }
  }
}
