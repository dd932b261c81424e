import { Button, Stack, Text } from '@mantine/core';
import { lazy, useState } from 'react';
import { daysBetween } from '../../../../shared/calendar/plain-date.js';
import { quantityOfDay } from '../../../../shared/explain/daily-series.js';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import type { StopPart } from '../../../../shared/plan/cost/stop-feeding.js';
import type { StopWeek } from '../../../../shared/plan/cost/stop-weeks.js';
import { Fact, Facts } from '../../explain/number.js';
import { DateField } from '../../fields/date-input.js';
import { AgeTable, type AgeColumn } from './age-table.js';
import { useBatchCost } from './use-batch-cost.js';
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
  const costs = useBatchCost(plan, asked);
  if (!costs) return <Text>Working it out …</Text>;
  const part = costs.stop;
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
      <Weeks weeks={weeks} isPriced={stop !== undefined} />
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

/** Without a price for all of it, what a week costs is not known: what is left of it looked cheap. */
const Weeks = ({ weeks, isPriced }: { weeks: readonly StopWeek[]; isPriced: boolean }) => (
  <AgeTable
    label={isPriced ? 'Feed and money by week' : 'Feed by week'}
    ageLabel="Age"
    rows={weeks}
    columns={isPriced ? [...FEED, ...MONEY] : FEED}
    ageOf={ageOf}
    isChosen={({ isPlanned }) => isPlanned === true}
  />
);

const FEED: readonly AgeColumn<StopWeek>[] = [
  ['Day', ({ on }) => on],
  ['Live each', ({ liveEach }) => liveEach],
  ['Dressed each', ({ dressedEach }) => dressedEach],
  ['Feed', ({ feed }) => feed],
  ['Feed for the gain', ({ conversion }) => conversion],
];

const MONEY: readonly AgeColumn<StopWeek>[] = [
  ['Cost', ({ cost }) => cost],
  ['So far', ({ soFar }) => soFar],
  ['What they gain next, dressed', ({ next }) => next],
];

function ageOf({ ageDays, isPlanned, isBeyond }: StopWeek): string {
  const age = ageDays % 7 === 0 ? inWeeks(ageDays / 7) : `${ageDays} days`;
  return isPlanned ? `${age}, as planned` : isBeyond ? `${age}, if kept on` : age;
}

const inWeeks = (weeks: number): string => (weeks === 1 ? '1 week' : `${weeks} weeks`);
