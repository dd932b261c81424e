import { Table, Text } from '@mantine/core';
import type { Quantity } from '../../../../shared/explain/quantity.js';
import type { LayAges, LayQuarter } from '../../../../shared/plan/cost/lay-ages.js';
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
      <WideTable label="A dozen as the hens grow old">
        <Table className="stacks">
          <Table.Thead>
            <Table.Tr>
              <Table.Th>Weeks old</Table.Th>
              {COLUMNS.map(([label]) => (
                <Table.Th key={label} ta="right">
                  {label}
                </Table.Th>
              ))}
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {quarters.map((quarter) => (
              <Table.Tr key={quarter.ageWeeks}>
                <Table.Th scope="row">{quarter.ageWeeks} weeks</Table.Th>
                {COLUMNS.map(([label, of]) => {
                  const number = of(quarter);
                  return (
                    <Table.Td key={label} data-label={label} ta="right">
                      {number ? <Num of={number} /> : '–'}
                    </Table.Td>
                  );
                })}
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </WideTable>
    </Section>
  );
}

const COLUMNS: readonly (readonly [string, (quarter: LayQuarter) => Quantity | undefined])[] = [
  ['From', ({ from }) => from],
  ['Eggs', ({ eggs }) => eggs],
  ['Feed', ({ feed }) => feed],
  ['Feed for a dozen', ({ feedCost }) => feedCost],
  ['A dozen so far, raising them too', ({ soFar }) => soFar],
];
