import { Table } from '@mantine/core';
import type { Quantity } from '../../../../shared/explain/quantity.js';
import { Num } from '../../explain/number.js';
import { WideTable } from '../../shell/wide-table.js';

/** What a column is called, and its number of a row where there is one. */
export type AgeColumn<Row> = readonly [label: string, of: (row: Row) => Quantity | undefined];

/** Numbers by age, a line an age: stacked on a phone. */
export function AgeTable<Row>({
  label,
  ageLabel,
  rows,
  columns,
  ageOf,
  isChosen,
}: {
  readonly label: string;
  readonly ageLabel: string;
  readonly rows: readonly Row[];
  readonly columns: readonly AgeColumn<Row>[];
  readonly ageOf: (row: Row) => string;
  readonly isChosen?: (row: Row) => boolean;
}) {
  return (
    <WideTable label={label}>
      <Table className="stacks stacks-in-lines">
        <Table.Thead>
          <Table.Tr>
            <Table.Th>{ageLabel}</Table.Th>
            {columns.map(([name]) => (
              <Table.Th key={name} ta="right">
                {name}
              </Table.Th>
            ))}
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {rows.map((row) => (
            <Table.Tr key={ageOf(row)} className={isChosen?.(row) ? 'way-chosen' : undefined}>
              <Table.Th scope="row">{ageOf(row)}</Table.Th>
              {columns.map(([name, of]) => {
                const number = of(row);
                return (
                  <Table.Td key={name} data-label={name} ta="right">
                    {number ? <Num of={number} /> : '–'}
                  </Table.Td>
                );
              })}
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </WideTable>
  );
}
