import { Table, type TableProps } from '@mantine/core';
import { Fragment, type ReactNode } from 'react';
import type { HeatPart } from '../../../../shared/plan/heat.js';
import { useSayDate } from '../../explain/say-date.js';
import { WideTable } from '../../shell/wide-table.js';

type HeatWeek = HeatPart['weeks'][number];

interface Props {
  readonly weeks: readonly HeatWeek[];
  readonly label: string;
  readonly table?: TableProps;
  /** What stands in the cell of a week. */
  readonly cell: (week: HeatWeek, when: Time) => ReactNode;
  /** What stands beside it: how warm the spot under the heat is; left out where there is none. */
  readonly spot?: (week: HeatWeek, when: Time) => ReactNode;
}

type Time = 'night' | 'day' | 'noon';
const TIMES: readonly (readonly [Time, string])[] = [
  ['night', 'Cold night'],
  ['day', 'Usual day'],
  ['noon', 'Hot noon'],
];

/** How the heaters are set on cold nights, usual days and hot noons, a row a week. */
export function HeatWeekTable({ weeks, label, table, cell, spot }: Props) {
  const sayDate = useSayDate();
  return (
    <WideTable label={label}>
      <Table {...table}>
        <Table.Thead>
          <Table.Tr>
            <Table.Th>From</Table.Th>
            {TIMES.map(([when, name]) => (
              <Fragment key={when}>
                <Table.Th>{name}</Table.Th>
                {spot && <Table.Th>Spot under the heat</Table.Th>}
              </Fragment>
            ))}
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {weeks.map((week) => (
            <Table.Tr key={week.from} className="avoid-break">
              <Table.Td>
                <span className="whole">{sayDate(week.from)}</span>
              </Table.Td>
              {TIMES.map(([when]) => (
                <Fragment key={when}>
                  <Table.Td>{cell(week, when)}</Table.Td>
                  {spot && <Table.Td>{spot(week, when)}</Table.Td>}
                </Fragment>
              ))}
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </WideTable>
  );
}
