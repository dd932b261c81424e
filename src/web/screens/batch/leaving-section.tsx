import { Stack, Table, Text } from '@mantine/core';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import type { LayingPart } from '../../../../shared/plan/laying.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { Fact, Facts, Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { WideTable } from '../../shell/wide-table.js';
import { Cautions, Section } from '../../shell/section.js';
import { Processing } from './processing-section.js';

export function LeavingSection({ plan, tables }: { plan: BatchPlan; tables: Tables }) {
  return (
    <Stack>
      {plan.leaving && <Processing leaving={plan.leaving} />}
      {plan.laying && <Laying plan={plan} laying={plan.laying} />}
      <Cautions
        keys={plan.cautions}
        of={['slaughter', 'chilling', 'heat-stress', 'calcium']}
        tables={tables}
      />
    </Stack>
  );
}

function Laying({ plan, laying }: { plan: BatchPlan; laying: LayingPart }) {
  const sayDate = useSayDate();
  return (
    <>
      <Section title="Eggs">
        <Facts>
          <Fact of={laying.firstEgg} />
          <Fact of={laying.ageAtFirstEgg} />
          <Fact of={laying.peak} />
          <Fact of={laying.eggsInYear} />
          <Fact of={laying.eggsPerHen} />
          <Fact of={laying.feedPerDozen} />
          <Fact of={laying.feedToFirstEgg} />
          <Fact of={plan.birds.cockerelsLeave?.on} />
          <Fact of={plan.birds.cockerelsLeave?.birds} />
        </Facts>
        <WideTable label="Eggs by week" minWidth={320} maxHeight={360}>
          <Table stickyHeader aria-label="Eggs by week">
            <Table.Thead>
              <Table.Tr>
                <Table.Th>Week from</Table.Th>
                <Table.Th>Age, weeks</Table.Th>
                <Table.Th>Eggs</Table.Th>
              </Table.Tr>
            </Table.Thead>
            <Table.Tbody>
              {laying.weeks.map((week) => (
                <Table.Tr key={week.from}>
                  <Table.Td>{sayDate(week.from)}</Table.Td>
                  <Table.Td>{week.ageWeeks}</Table.Td>
                  <Table.Td>
                    <Num of={week.eggs} />
                  </Table.Td>
                </Table.Tr>
              ))}
            </Table.Tbody>
          </Table>
        </WideTable>
      </Section>
      <Section title="Lamp hours to add">
        <Text size="sm" mb="xs">
          Add the hours in the morning, and never shorten the day of laying hens. Without lamps, lay
          falls below 12 hours of daylight.
        </Text>
        <Table aria-label="Lamp hours by date">
          <Table.Thead>
            <Table.Tr>
              <Table.Th>From</Table.Th>
              <Table.Th>Wanted</Table.Th>
              <Table.Th>Natural</Table.Th>
              <Table.Th>Lamp</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {laying.light.map((step) => (
              <Table.Tr key={step.from}>
                <Table.Td>{sayDate(step.from)}</Table.Td>
                <Table.Td>
                  <Num of={step.wanted} />
                </Table.Td>
                <Table.Td>
                  <Num of={step.natural} />
                </Table.Td>
                <Table.Td>
                  <Num of={step.add} />
                </Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </Section>
    </>
  );
}
