import { Table, TableForeignKey, TableIndex, type TableColumnOptions } from 'typeorm';

/** The table of told facts, as the migration that made it made it. */
export function tableOfFacts(): Table {
  const text = (
    name: string,
    length: number,
    more: Partial<TableColumnOptions> = {},
  ): TableColumnOptions => ({ name, type: 'varchar', length: String(length), ...more });
  return new Table({
    name: 'told_facts',
    columns: [
      text('id', 64, { isPrimary: true }),
      text('farmId', 36),
      text('kind', 24),
      text('about', 200),
      text('on', 10),
      { name: 'details', type: 'text' },
      text('saidBy', 80, { isNullable: true }),
      text('toldAt', 24),
      text('key', 80),
      text('replaces', 64, { isNullable: true }),
      text('takenBackAt', 24, { isNullable: true }),
    ],
    foreignKeys: [
      new TableForeignKey({
        columnNames: ['farmId'],
        referencedTableName: 'farms',
        referencedColumnNames: ['id'],
        onDelete: 'CASCADE',
      }),
    ],
    indices: [
      new TableIndex({ name: 'told_facts_kind', columnNames: ['farmId', 'kind', 'on'] }),
      new TableIndex({ name: 'told_facts_told', columnNames: ['farmId', 'toldAt'] }),
      new TableIndex({ name: 'told_facts_key', columnNames: ['farmId', 'key'], isUnique: true }),
    ],
  });
}
