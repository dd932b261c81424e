import { Stack, Table, Text } from '@mantine/core';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { sayPrice } from '../../../../shared/money/unit-price.js';
import type { Reader } from '../../../../shared/units/format.js';
import { Fact, Facts, Num } from '../../explain/number.js';
import { WideTable } from '../../shell/wide-table.js';
import { Section } from '../../shell/section.js';

export function BillSection({
  plan: { bill },
  farm,
}: {
  readonly plan: BatchPlan;
  readonly farm: Reader;
}) {
  return (
    <Stack>
      <Section level={3} title="The bill">
        <WideTable label="The bill" minWidth={300}>
          <Table>
            <Table.Thead>
              <Table.Tr>
                <Table.Th>For</Table.Th>
                <Table.Th>Amount</Table.Th>
                <Table.Th>Price of one</Table.Th>
                <Table.Th ta="right">Cost</Table.Th>
              </Table.Tr>
            </Table.Thead>
            <Table.Tbody>
              {bill.lines.map((line) => (
                <Table.Tr key={line.label}>
                  <Table.Th scope="row" fw={400}>
                    {line.label}
                  </Table.Th>
                  <Table.Td>
                    <Num of={line.amount} />
                  </Table.Td>
                  <Table.Td>
                    {line.price === undefined
                      ? 'no price given'
                      : sayPrice(line.price, line.amount.unit, farm)}
                    {line.product !== undefined && (
                      <Text size="xs" c="dimmed">
                        {line.product}
                      </Text>
                    )}
                  </Table.Td>
                  <Table.Td ta="right">{line.cost ? <Num of={line.cost} /> : '–'}</Table.Td>
                </Table.Tr>
              ))}
            </Table.Tbody>
            <Table.Tfoot>
              <Table.Tr>
                <Table.Th colSpan={3}>
                  {bill.leftOut.length === 0 ? 'Total' : `Total, ${bill.leftOut.join(', ')}`}
                </Table.Th>
                <Table.Th ta="right">
                  <Num of={bill.total} />
                </Table.Th>
              </Table.Tr>
            </Table.Tfoot>
          </Table>
        </WideTable>
        <Text size="sm" c="dimmed">
          Your own hours are not in it. Prices of your place stand under “Prices”; what you type in
          the order counts for this batch alone.
        </Text>
      </Section>
      <Section level={3} title="What one costs">
        <Facts>
          <Fact of={bill.perBird} />
          <Fact of={bill.perKgLive} />
          <Fact of={bill.perKgDressed} />
          <Fact of={bill.perDozen} />
          <Fact of={bill.ownHours} note="not in the bill. " />
        </Facts>
        {bill.perBird === undefined && (
          <Text size="sm" c="dimmed">
            Not known before everything in the bill has a price.
          </Text>
        )}
      </Section>
    </Stack>
  );
}
