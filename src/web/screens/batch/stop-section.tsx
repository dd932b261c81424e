import { Button, Stack, Table, Text } from '@mantine/core';
import { lazy, useState } from 'react';
import { daysBetween } from '../../../../shared/calendar/plain-date.js';
import { quantityOfDay } from '../../../../shared/explain/daily-series.js';
import type { Quantity } from '../../../../shared/explain/quantity.js';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import type { StopPart } from '../../../../shared/plan/cost/stop-feeding.js';
import type { StopWeek } from '../../../../shared/plan/cost/stop-weeks.js';
import { Fact, Facts, Num } from '../../explain/number.js';
import { DateField } from '../../fields/date-input.js';
import { WideTable } from '../../shell/wide-table.js';
import { batchCostOf } from './batch-cost-of.js';
import { Picture } from './story-section.js';
import type { AskedBatch, BatchDraft } from './use-plan.js';

const StopChart = lazy(() => import('./stop-chart.js'));

interface Props {
  readonly plan: BatchPlan;
  readonly asked: AskedBatch;
}

/** When meat birds have had enough feed: the day, its reasons, and a line a week. */
export default function StopSection({
  plan,
  asked,
  onChoose,
}: Props & { readonly onChoose: (more: BatchDraft) => void }) {
  const part = batchCostOf(plan, asked).stop;
  if (!part) return <Text>They are gone: nothing is left to decide.</Text>;
  const { stop, said, weeks, daily } = part;
  const pound = asked.farm.units === 'us' ? 'pound' : 'kilo';
  const canChoose =
    stop !== undefined &&
    asked.batch.slotDate === undefined &&
    stop.planned.on.value !== stop.best.value;
  return (
    <Stack>
      {said.map((line) => (
        <Text key={line}>{line}</Text>
      ))}
      {stop && (
        <Facts>
          <Fact of={stop.best} />
          <Fact of={stop.eachAtBest} />
          <Fact of={stop.goodFrom} />
          <Fact of={stop.goodTo} />
          <Fact of={stop.paysUntil} />
        </Facts>
      )}
      {canChoose && (
        <Button
          className="no-print"
          variant="light"
          onClick={() =>
            onChoose({ leaveAgeDays: Number(stop.bestAge.value), targetLiveKg: undefined })
          }
        >
          Plan the best day
        </Button>
      )}
      {stop && (
        <Picture title={`What a dressed ${pound} costs: what they gain next, and all of it`}>
          <StopChart
            daily={daily}
            arrivalDate={plan.arrivalDate}
            weeks={weeks}
            units={asked.farm.units}
            currency={asked.farm.currency}
          />
        </Picture>
      )}
      {stop && <AnotherDay plan={plan} part={part} />}
      <Weeks weeks={weeks} />
    </Stack>
  );
}

/** A slot that could be got, or any other day: what it does to the cost. */
function AnotherDay({ plan, part }: Pick<Props, 'plan'> & { part: StopPart }) {
  const [on, setOn] = useState<string>();
  const day = on === undefined ? undefined : daysBetween(plan.arrivalDate, on);
  const costs = day === undefined ? undefined : quantityOfDay(part.daily, 'off-best', day);
  const each = day === undefined ? undefined : quantityOfDay(part.daily, 'each-kg', day);
  return (
    <div className="no-print">
      <DateField label="A day or slot you could get" value={on} onChange={setOn} />
      {on !== undefined && (costs === undefined || Number(costs.value) < 0) && (
        <Text>
          No such day of these birds: it is before they come, or long after they are grown.
        </Text>
      )}
      {costs && 0 <= Number(costs.value) && (
        <Facts>
          <Fact of={costs} />
          <Fact of={each} />
        </Facts>
      )}
    </div>
  );
}

function Weeks({ weeks }: { weeks: readonly StopWeek[] }) {
  return (
    <WideTable label="Feed and money by week">
      <Table className="stacks">
        <Table.Thead>
          <Table.Tr>
            <Table.Th>Age</Table.Th>
            {COLUMNS.map(([label]) => (
              <Table.Th key={label} ta="right">
                {label}
              </Table.Th>
            ))}
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {weeks.map((week) => (
            <Table.Tr key={week.ageDays} className={week.isPlanned ? 'way-chosen' : undefined}>
              <Table.Th scope="row">{ageOf(week)}</Table.Th>
              {COLUMNS.map(([label, of]) => {
                const number = of(week);
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
  );
}

const COLUMNS: readonly (readonly [string, (week: StopWeek) => Quantity | undefined])[] = [
  ['Day', ({ on }) => on],
  ['Live each', ({ liveEach }) => liveEach],
  ['Dressed each', ({ dressedEach }) => dressedEach],
  ['Feed', ({ feed }) => feed],
  ['Feed for the gain', ({ conversion }) => conversion],
  ['Cost', ({ cost }) => cost],
  ['So far', ({ soFar }) => soFar],
  ['What they gain next, dressed', ({ next }) => next],
];

function ageOf({ ageDays, isPlanned, isBeyond }: StopWeek): string {
  const age = ageDays % 7 === 0 ? inWeeks(ageDays / 7) : `${ageDays} days`;
  return isPlanned ? `${age}, as planned` : isBeyond ? `${age}, if kept on` : age;
}

const inWeeks = (weeks: number): string => (weeks === 1 ? '1 week' : `${weeks} weeks`);
