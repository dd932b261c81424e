import { Table, TableForeignKey, TableIndex, type TableColumnOptions } from 'typeorm';

/**
 * A table whose rows go when their farm goes, for migrations. What a migration has made stays as it
 * is for good, so another kind of table gets a helper of its own.
 *
 * @param isFoundByKey the primary key begins with the farm, so that no index on it is needed
 */
export function tableOfFarm(
  name: string,
  columns: TableColumnOptions[],
  { isFoundByKey = false } = {},
): Table {
  return new Table({
    name,
    columns,
    foreignKeys: [
      new TableForeignKey({
        columnNames: ['farmId'],
        referencedTableName: 'farms',
        referencedColumnNames: ['id'],
        onDelete: 'CASCADE',
      }),
    ],
    indices: isFoundByKey
      ? []
      : [new TableIndex({ name: `${name}_farm`, columnNames: ['farmId'] })],
  });
}
