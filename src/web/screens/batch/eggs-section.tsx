import { Stack, Table, Text } from '@mantine/core';
import { lazy, Suspense } from 'react';
import type { PlainDate } from '../../../../shared/calendar/plain-date.js';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { lightFrom } from '../../../../shared/plan/lay-lamp.js';
import type { LayingPart } from '../../../../shared/plan/laying.js';
import { formatMonth } from '../../../../shared/units/dates.js';
import { Fact, Facts, Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { Section } from '../../shell/section.js';
import { WideTable } from '../../shell/wide-table.js';
import { formatHours } from '../../../../shared/units/format.js';

const EggChart = lazy(() => import('./egg-chart.js'));

/** Eggs by month and year, hens for the eggs that are eaten, the lamp. */
export function EggsSection({ plan, laying }: { plan: BatchPlan; laying: LayingPart }) {
  const isAhead = plan.today <= String(laying.firstEgg.value);
  return (
    <Stack>
      <Section level={3} title="Eggs">
        <Facts>
          {isAhead && <Fact of={laying.firstEgg} />}
          {isAhead && <Fact of={laying.ageAtFirstEgg} />}
          <Fact of={laying.peak} />
          <Fact of={laying.eggsInYear} />
          <Fact of={laying.eggsPerHen} />
          <Fact of={laying.own} />
          <Fact of={laying.feedPerDozen} />
          <Fact of={laying.paysUntil} />
          <Fact of={laying.molts[0]} />
          {isAhead && <Fact of={laying.lastMedicatedDay} />}
          <Fact of={laying.oysterShell} />
          {isAhead && <Fact of={laying.feedToFirstEgg} />}
          <Fact of={laying.cockerelFeed} />
          <Fact of={laying.cockerelLive} />
          <Fact of={plan.birds.cockerelsLeave?.on} />
          <Fact of={plan.birds.cockerelsLeave?.birds} />
          <Fact of={plan.birds.cockerelsLeave?.freezerNeed} />
        </Facts>
      </Section>
      <Months laying={laying} />
      <Years laying={laying} />
      <Weeks laying={laying} />
      <Lamp laying={laying} today={plan.today} />
    </Stack>
  );
}

function Months({ laying }: { laying: LayingPart }) {
  const sayDate = useSayDate();
  const { months, shortOf, lampH, litToH } = laying;
  const hasHens = shortOf !== undefined;
  return (
    <Section level={3} title="Eggs a week, by month">
      <Text size="sm" mb="xs">
        {lampH === undefined
          ? `The plan counts on the sun alone: the coop has no lamp. Beside it, what a lamp to ${formatHours(litToH)} would give.`
          : `The coop’s lamp makes up ${formatHours(lampH)} of light. Beside it, what the sun alone would give.`}{' '}
        How much a short day costs is a planning guess.
      </Text>
      <Suspense fallback={<Text>Drawing the chart …</Text>}>
        <EggChart laying={laying} />
      </Suspense>
      {hasHens && shortOf.length === 0 && (
        <Text mt="xs">In every week there are as many eggs as you eat.</Text>
      )}
      {hasHens && 0 < shortOf.length && (
        <Text mt="xs">
          Too few eggs:{' '}
          {shortOf.map(({ from, to, least }, k) => (
            <span key={from}>
              {0 < k && '; '}
              {sayDate(from)} to {sayDate(to)}, down to <Num of={least} /> a week
            </span>
          ))}
          .
        </Text>
      )}
      <WideTable label="Eggs by month" minWidth={hasHens ? 520 : 360} maxHeight={420}>
        <Table stickyHeader aria-label="Eggs by month">
          <Table.Thead>
            <Table.Tr>
              <Table.Th>Month</Table.Th>
              <Table.Th>Daylight</Table.Th>
              <Table.Th>No lamp</Table.Th>
              <Table.Th>Lamp</Table.Th>
              {hasHens && <Table.Th>Hens you need, no lamp</Table.Th>}
              {hasHens && <Table.Th>With a lamp</Table.Th>}
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {months.map((month) => (
              <Table.Tr key={month.from}>
                <Table.Td>{formatMonth(month.from)}</Table.Td>
                <Table.Td>
                  <Num of={month.sun} />
                </Table.Td>
                <Table.Td>
                  <Num of={month.unlit} />
                </Table.Td>
                <Table.Td>
                  <Num of={month.lit} />
                </Table.Td>
                {hasHens && (
                  <Table.Td>{month.hensUnlit ? <Num of={month.hensUnlit} /> : '–'}</Table.Td>
                )}
                {hasHens && <Table.Td>{month.hensLit ? <Num of={month.hensLit} /> : '–'}</Table.Td>}
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </WideTable>
      {hasHens && (
        <Text size="sm" c="dimmed">
          No flock is sized by the weeks in which hens come into lay, or molt.
        </Text>
      )}
    </Section>
  );
}

function Years({ laying: { years, paysUntil } }: { laying: LayingPart }) {
  const sayDate = useSayDate();
  const hasCost = years.some(({ feedCostPerDozen }) => feedCostPerDozen);
  return (
    <Section level={3} title="Later years">
      <WideTable label="Eggs by laying year">
        <Table className="stacks" aria-label="Eggs by laying year">
          <Table.Thead>
            <Table.Tr>
              <Table.Th>From</Table.Th>
              <Table.Th>Eggs</Table.Th>
              <Table.Th>Of a hen that lives</Table.Th>
              <Table.Th>Feed a dozen</Table.Th>
              {hasCost && <Table.Th>Feed cost a dozen</Table.Th>}
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {years.map((year) => (
              <Table.Tr key={year.year}>
                <Table.Td className="whole-line">{sayDate(year.from)}</Table.Td>
                <Table.Td data-label="Eggs">
                  <Num of={year.eggs} />
                </Table.Td>
                <Table.Td data-label="Of a hen that lives">
                  <Num of={year.eggsPerHen} />
                </Table.Td>
                <Table.Td data-label="Feed a dozen">
                  <Num of={year.feedPerDozen} />
                </Table.Td>
                {hasCost && (
                  <Table.Td data-label="Feed cost a dozen">
                    {year.feedCostPerDozen && <Num of={year.feedCostPerDozen} />}
                  </Table.Td>
                )}
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </WideTable>
      {!paysUntil && (
        <Text size="sm" c="dimmed">
          With a price for the hens’ feed and for a dozen eggs, the plan says until when they pay
          for their feed.
        </Text>
      )}
    </Section>
  );
}

function Weeks({ laying }: { laying: LayingPart }) {
  const sayDate = useSayDate();
  return (
    <Section level={3} title="First year by week">
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
  );
}

function Lamp({ laying: { light, lampH }, today }: { laying: LayingPart; today: PlainDate }) {
  const sayDate = useSayDate();
  return (
    <Section level={3} title={lampH === undefined ? 'If you hang a lamp' : 'Lamp hours to add'}>
      <Text size="sm" mb="xs">
        Add the hours in the morning, and never shorten the day of laying hens. Dust and straw burn:
        take a small lamp in a closed fitting, fixed so that no bird can knock it down.
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
          {lightFrom(light, today).map((step) => (
            <Table.Tr key={step.from}>
              <Table.Td>{step.from < today ? 'Now' : sayDate(step.from)}</Table.Td>
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
  );
}
