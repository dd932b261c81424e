import { Table, Text } from '@mantine/core';
import type { LayAges } from '../../../../shared/plan/cost/lay-ages.js';
import { Num } from '../../explain/number.js';
import { Section } from '../../shell/section.js';
import { WideTable } from '../../shell/wide-table.js';

/** What a dozen costs as hens grow old, a line a quarter of a laying year. */
export function AgesOfHens({ ages: { said, quarters } }: { ages: LayAges }) {
  return (
    <Section level={3} title="As the hens grow old">
      {said.map((line) => (
        <Text key={line}>{line}</Text>
      ))}
      <WideTable label="A dozen as the hens grow old" minWidth={560}>
        <Table>
          <Table.Thead>
            <Table.Tr>
              <Table.Th>From</Table.Th>
              <Table.Th ta="right">Weeks old</Table.Th>
              <Table.Th ta="right">Eggs</Table.Th>
              <Table.Th ta="right">Feed</Table.Th>
              <Table.Th ta="right">Feed for a dozen</Table.Th>
              <Table.Th ta="right">A dozen so far, raising them too</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {quarters.map((quarter) => (
              <Table.Tr key={quarter.ageWeeks}>
                <Table.Th scope="row" fw={400}>
                  <Num of={quarter.from} />
                </Table.Th>
                <Table.Td ta="right">{quarter.ageWeeks}</Table.Td>
                <Table.Td ta="right">
                  <Num of={quarter.eggs} />
                </Table.Td>
                <Table.Td ta="right">
                  <Num of={quarter.feed} />
                </Table.Td>
                <Table.Td ta="right">{quarter.feedCost && <Num of={quarter.feedCost} />}</Table.Td>
                <Table.Td ta="right">{quarter.soFar && <Num of={quarter.soFar} />}</Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </WideTable>
    </Section>
  );
}
