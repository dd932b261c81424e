import { Table, Text } from '@mantine/core';
import type { Stocking } from '../../../../shared/plan/stocking.js';
import { Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { WideTable } from '../../shell/wide-table.js';

/** How many birds fit where they live, on the days that decide it. */
export function StockingTable({ rows }: { rows: readonly Stocking[] }) {
  const sayDate = useSayDate();
  if (rows.length === 0) return null;
  return (
    <WideTable label="Birds that fit">
      <Text size="sm" fw={700} mt="sm">
        {rows[0]!.place}
      </Text>
      <Table className="stacks">
        <Table.Thead>
          <Table.Tr>
            <Table.Th>When</Table.Th>
            <Table.Th>Birds that fit</Table.Th>
            <Table.Th>Birds then</Table.Th>
            <Table.Th>Floor a bird</Table.Th>
            <Table.Th>Floor they need</Table.Th>
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {rows.map(({ when, on, fits, birds, limit, needed }) => (
            <Table.Tr key={when}>
              <Table.Th scope="row" fw={400}>
                {when}, {sayDate(on)}
              </Table.Th>
              <Table.Td data-label="Birds that fit">
                {fits ? <Num of={fits} /> : 'none chosen'}
              </Table.Td>
              <Table.Td data-label="Birds then">
                <Num of={birds} />
              </Table.Td>
              <Table.Td data-label="Floor a bird">
                <Num of={limit} />
              </Table.Td>
              <Table.Td data-label="Floor they need">
                <Num of={needed} />
              </Table.Td>
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </WideTable>
  );
}
