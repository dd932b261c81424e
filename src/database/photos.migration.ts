import type { MigrationInterface, QueryRunner } from 'typeorm';
import { tableOfFarm } from './table-of-farm.js';

/** Photos of notes. */
export class Photos1798000040000000 implements MigrationInterface {
  name = 'Photos1798000040000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.createTable(
      tableOfFarm('photos', [
        { name: 'id', type: 'varchar', length: '64', isPrimary: true },
        { name: 'farmId', type: 'varchar', length: '36' },
        { name: 'sentAt', type: 'varchar', length: '24' },
        { name: 'isTold', type: 'boolean' },
        { name: 'bytes', type: 'integer' },
        { name: 'jpeg', type: 'text' },
      ]),
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.dropTable('photos');
  }
}
