import { Stack, Table, Text } from '@mantine/core';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { formatValue } from '../../../../shared/units/format.js';
import { useOpener } from '../../explain/explain-panel.js';
import { ConversionUnit, Fact, Facts, Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { Section } from '../../shell/section.js';

export function FeedSection({ plan }: { plan: BatchPlan }) {
  const sayDate = useSayDate();
  const { reader } = useOpener();
  const { feed, leaving } = plan;
  return (
    <Stack>
      <Section level={3} title="In all">
        <Facts>
          <Fact of={feed.total} />
          <Fact of={feed.perBird} />
          <Fact of={leaving?.conversion} note={<ConversionUnit />} />
          <Fact of={plan.laying?.feedPerDozen} />
          <Fact of={feed.peakWater} />
          <Fact
            of={feed.used?.used}
            note={
              feed.used &&
              `${formatValue(feed.used.plannedKg, 'kg', reader)} was planned for those days. `
            }
          />
          <Fact of={feed.used?.factor} note="The feed to come goes by it. " />
          <Fact
            of={feed.used?.wasted}
            note={`${feed.wasteShare === 0 ? 'Nothing' : formatValue(feed.wasteShare, 'share', reader)} is planned as spilled. `}
          />
          <Fact of={feed.used?.conversion} note={<ConversionUnit />} />
        </Facts>
      </Section>
      {feed.phases.map((phase) => (
        <Section key={phase.phaseId} level={3} title={phase.name}>
          <Text size="sm" mb="xs">
            {phase.protein}. Last day {sayDate(phase.lastDay)}.
          </Text>
          <Facts>
            <Fact of={phase.starts} />
            <Fact of={phase.bags} />
            <Fact of={phase.totalKg} />
          </Facts>
          <Table mt="sm">
            <Table.Thead>
              <Table.Tr>
                <Table.Th>Buy by</Table.Th>
                <Table.Th>Bags</Table.Th>
                <Table.Th>Fed</Table.Th>
              </Table.Tr>
            </Table.Thead>
            <Table.Tbody>
              {phase.deliveries.map((d) => (
                <Table.Tr key={d.firstUse}>
                  <Table.Td>
                    <Num of={d.buyBy} />
                  </Table.Td>
                  <Table.Td>
                    <Num of={d.bags} />
                  </Table.Td>
                  <Table.Td>
                    {sayDate(d.firstUse)} to {sayDate(d.lastUse)}
                  </Table.Td>
                </Table.Tr>
              ))}
            </Table.Tbody>
          </Table>
        </Section>
      ))}
    </Stack>
  );
}
