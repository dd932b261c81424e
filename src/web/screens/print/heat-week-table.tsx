import { Table, type TableProps } from '@mantine/core';
import type { ReactNode } from 'react';
import type { HeatPart } from '../../../../shared/plan/heat.js';
import { useSayDate } from '../../explain/say-date.js';
import { WideTable } from '../../shell/wide-table.js';

type HeatWeek = HeatPart['weeks'][number];

interface Props {
  readonly weeks: readonly HeatWeek[];
  readonly label: string;
  readonly table?: TableProps;
  /** What stands in the cell of a week. */
  readonly cell: (week: HeatWeek, when: 'night' | 'day' | 'noon') => ReactNode;
}

/** How the heaters are set on cold nights, usual days and hot noons, a row a week. */
export function HeatWeekTable({ weeks, label, table, cell }: Props) {
  const sayDate = useSayDate();
  return (
    <WideTable label={label}>
      <Table {...table}>
        <Table.Thead>
          <Table.Tr>
            <Table.Th>From</Table.Th>
            <Table.Th>Cold night</Table.Th>
            <Table.Th>Usual day</Table.Th>
            <Table.Th>Hot noon</Table.Th>
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {weeks.map((week) => (
            <Table.Tr key={week.from} className="avoid-break">
              <Table.Td>
                <span className="whole">{sayDate(week.from)}</span>
              </Table.Td>
              <Table.Td>{cell(week, 'night')}</Table.Td>
              <Table.Td>{cell(week, 'day')}</Table.Td>
              <Table.Td>{cell(week, 'noon')}</Table.Td>
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </WideTable>
  );
}
