import { TableIndex, type MigrationInterface, type QueryRunner } from 'typeorm';

const INDICES = [
  new TableIndex({ name: 'told_facts_about', columnNames: ['farmId', 'about', 'kind'] }),
  new TableIndex({ name: 'told_facts_replaces', columnNames: ['farmId', 'replaces'] }),
];

/** What was told of one thing, and what took the place of a fact, is found without reading all years. */
export class ToldBySubject1798000041000000 implements MigrationInterface {
  name = 'ToldBySubject1798000041000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.createIndices('told_facts', INDICES);
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const { name } of INDICES) await runner.dropIndex('told_facts', name!);
  }
}
