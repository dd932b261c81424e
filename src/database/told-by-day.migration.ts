import { TableIndex, type MigrationInterface, type QueryRunner } from 'typeorm';

const INDEX = new TableIndex({
  name: 'told_facts_on',
  columnNames: ['farmId', 'on', 'toldAt', 'id'],
});

/** The newest of what was told are found in their order, without sorting all years. */
export class ToldByDay1798000042000000 implements MigrationInterface {
  name = 'ToldByDay1798000042000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.createIndices('told_facts', [INDEX]);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.dropIndex('told_facts', INDEX.name!);
  }
}
