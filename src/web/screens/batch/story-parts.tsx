import { Button } from '@mantine/core';
import { lazy, Suspense } from 'react';
import { Link } from 'wouter';
import { daysBetween } from '../../../../shared/calendar/plain-date.js';
import { quantityOfDay } from '../../../../shared/explain/daily-series.js';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import type { ShortLastFeed } from '../../../../shared/plan/last-feed.js';
import type { Quantity } from '../../../../shared/explain/quantity.js';
import { formatValue } from '../../../../shared/units/format.js';
import { formatHeadline } from '../../../../shared/explain/headline.js';
import { useOpener } from '../../explain/explain-panel.js';
import { Fact, Facts, Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { sayAge } from './say-age.js';
import { Cautions } from '../../shell/section.js';
import { BillSection } from './bill-section.js';
import { BillBars } from './bill-bars.js';
import { ColdNights } from './cold-nights.js';
import { BrooderSection } from './brooder-section.js';
import type { ChartOf } from './plan-chart.js';
import { FeedSection } from './feed-section.js';
import { LeavingSection } from './leaving-section.js';
import { ProcessingWays } from './processing-ways.js';
import { OutdoorsSection } from './outdoors-section.js';
import { Lead, More, Picture, StoryFold } from './story-section.js';
import { StoryTasks } from './story-tasks.js';
import type { AskedBatch, BatchDraft } from './use-plan.js';
import { WaysOutTable } from './ways-out-table.js';

const PlanChart = lazy(() => import('./plan-chart.js'));
const EggChart = lazy(() => import('./egg-chart.js'));
const StopSection = lazy(() => import('./stop-section.js'));
const MovesSection = lazy(() => import('./moves-section.js'));
const BringSection = lazy(() => import('./bring-section.js'));

/** What each part of the story is told from. */
export interface PartProps {
  readonly plan: BatchPlan;
  readonly asked: AskedBatch;
  readonly isSaved: boolean;
}

/** A part in which ways stand side by side, to be chosen by a touch. */
interface ChoosingProps extends PartProps {
  readonly onChoose: (more: BatchDraft) => void;
}

const isOver = ({ today }: BatchPlan, date: unknown): boolean =>
  typeof date === 'string' && date < today;

export const Chart = ({ plan, asked, of }: PartProps & { of: ChartOf }) => (
  <PlanChart plan={plan} units={asked.farm.units} of={of} />
);

const CAUTIONS = {
  brooder: [
    'heat-lamp',
    'heat-plate',
    'carbon-monoxide',
    'power-cut',
    'gas-empty',
    'circuit',
    'poults',
    'ducklings',
    'salmonella',
  ],
  feed: ['medicated', 'calcium'],
  out: ['cold', 'frozen-drinkers', 'coop-frost', 'manure', 'behavior'],
  end: ['slaughter', 'chilling', 'heat-stress'],
} as const;

/** Nothing to mind once the last one is gone. */
const Mind = ({ plan, asked, part }: PartProps & { part: keyof typeof CAUTIONS }) =>
  plan.birds.counted?.lastLeftOn === undefined && (
    <Cautions keys={plan.cautions} of={CAUTIONS[part]} tables={asked.tables} />
  );

/** Whether they go into their home on the day they come. */
const cameGrown = ({ arrivalDate, outdoors }: BatchPlan): boolean =>
  outdoors.moveOut?.value === arrivalDate;

/** A number of a part in words, for the part while it is shut. */
function useSayFact(): (of: Quantity | undefined) => string {
  const { reader } = useOpener();
  return (of) => (of ? `${of.label}: ${formatHeadline(of, reader)}` : '');
}

function sayOut({ outdoors: { moveOut, ageAtMove, home } }: BatchPlan): string {
  if (!moveOut || !ageAtMove) return 'No date with nights warm enough in time was found';
  return `${sayAge(ageAtMove.value)} old${home === undefined ? '' : `, to ${home}`}`;
}

/** Nothing where a hen keeps them warm, or of grown birds. */
export function BrooderPart(props: PartProps) {
  const { plan } = props;
  const { brooding, heat } = plan;
  const sayFact = useSayFact();
  if (!brooding) return null;
  const day = daysBetween(plan.arrivalDate, plan.today);
  const now = quantityOfDay(plan.daily, 'under-heater', day);
  const isPast = isOver(plan, plan.outdoors.moveOut?.value);
  return (
    <StoryFold
      part="brooder"
      title="The brooder"
      isPast={isPast}
      answer={sayFact(heat?.lastHeatDay)}
    >
      <Lead of={now ?? brooding.steps[0]?.underHeater}>
        <p>{now ? 'Today' : 'On the first day'}; less from step to step.</p>
      </Lead>
      <Facts>
        <Fact of={heat?.heatersNeeded} />
        <Fact of={heat?.need} />
        <Fact of={heat?.lastHeatDay} />
        <Fact of={heat?.cost} />
      </Facts>
      <Picture title="Under the heat, against the nights">
        <Chart {...props} of="heat" />
      </Picture>
      <StoryTasks {...props} part="brooder" />
      {!isPast && <Mind {...props} part="brooder" />}
      <More title="Temperatures, lamps and room">
        <BrooderSection plan={plan} brooding={brooding} />
      </More>
    </StoryFold>
  );
}

/** The mixer, set to these birds and the feed they get now, or first. */
function mixHref({ plan, asked: { farm, batch } }: PartProps): string {
  const { phases } = plan.feed;
  const now = phases.find(({ lastDay }) => plan.today <= lastDay) ?? phases[0];
  const to = new URLSearchParams({ breed: batch.strainId, for: batch.purpose });
  if (now) to.set('phase', now.phaseId);
  return `/farm/${farm.id}/feed/mix?${to}`;
}

export function FeedPart({ onChoose, ...props }: ChoosingProps) {
  const { plan } = props;
  const { feed } = plan;
  const { reader } = useOpener();
  return (
    <StoryFold
      part="feed"
      title="Feed and water"
      answer={feed.phases
        .map(({ name, bags }) => `${name.toLowerCase()} ${formatValue(bags.value, 'bags', reader)}`)
        .join(', ')}
    >
      <Lead of={feed.total}>
        <ul className="story-list">
          {feed.phases.map((phase) => (
            <li key={phase.phaseId}>
              {phase.name}: <Num of={phase.bags} /> from <Num of={phase.starts} />
            </li>
          ))}
        </ul>
        {1 < feed.phases.length && (
          <p>
            {feed.mixDays === 0
              ? 'Medicated feed is not mixed into the next: its label counts from the last day of it.'
              : `From one feed to the next over ${feed.mixDays} days, more of the new each day (common practice).`}
          </p>
        )}
      </Lead>
      <Facts>
        <Fact of={feed.peakWater} />
      </Facts>
      {feed.shortLast && <LastFeed of={feed.shortLast} onChoose={onChoose} />}
      <Picture title="Feed a day, by phase">
        <Chart {...props} of="feed" />
      </Picture>
      <StoryTasks {...props} part="feed" />
      <Mind {...props} part="feed" />
      <More title="Bags by the day to buy them">
        <FeedSection plan={plan} />
      </More>
      <p className="no-print">
        <Link href={mixHref(props)}>Mix your own for them</Link>
      </p>
    </StoryFold>
  );
}

/** A feed for the last few days: leave it out, or take it up again. */
function LastFeed({
  of: { name, before, days, isLeftOut },
  onChoose,
}: { of: ShortLastFeed } & Pick<ChoosingProps, 'onChoose'>) {
  return (
    <p>
      {isLeftOut
        ? `${before} to the end; ${name.toLowerCase()} would be for ${days} days only. `
        : `${name} is for ${days} days only. `}
      <Button
        className="no-print"
        variant="light"
        size="compact-md"
        onClick={() => onChoose({ skipsLastFeed: isLeftOut ? undefined : true })}
      >
        {isLeftOut ? `Feed ${name.toLowerCase()} after all` : `Stay on ${before.toLowerCase()}`}
      </Button>
    </p>
  );
}

export function OutPart({ onChoose, ...props }: ChoosingProps) {
  const { plan } = props;
  const { outdoors, space } = plan;
  const isGrown = cameGrown(plan);
  return (
    <StoryFold part="out" title={isGrown ? 'The coop' : 'Going out'} answer={sayOut(plan)}>
      <Lead of={outdoors.moveOut}>
        {outdoors.moveOut ? (
          <p>
            {outdoors.ageAtMove && <>{sayAge(outdoors.ageAtMove.value)} old. </>}
            {outdoors.home && `To ${outdoors.home}.`}
          </p>
        ) : (
          <p>No date with nights warm enough in time was found.</p>
        )}
      </Lead>
      <Facts>
        <Fact of={outdoors.nightLow} />
        <ColdNights of={outdoors.coldNights} />
        <Fact of={space.spare} />
        <Fact of={outdoors.floorNeeded} />
      </Facts>
      {!isGrown && <WaysOutTable plan={plan} onChoose={onChoose} />}
      {plan.brooding && (
        <Picture title="Brooder floor: need and have, until they go">
          <Chart {...props} of="floor" />
        </Picture>
      )}
      <StoryTasks {...props} part="out" />
      <Mind {...props} part="out" />
      <More title={isGrown ? 'Room, feeders and drinkers' : 'Nights, room and ground'}>
        <OutdoorsSection plan={plan} />
      </More>
    </StoryFold>
  );
}

export function EndPart({ onChoose, ...props }: ChoosingProps) {
  const { plan } = props;
  const { leaving, laying, birds } = plan;
  const doTheyLay = isOver(plan, laying?.firstEgg.value);
  const eggsToday = quantityOfDay(
    plan.daily,
    'eggs-day',
    daysBetween(plan.arrivalDate, plan.today),
  );
  const sayDate = useSayDate();
  const sayFact = useSayFact();
  return (
    <StoryFold
      part="end"
      title={leaving ? 'The last day' : 'The eggs'}
      answer={
        leaving
          ? `${sayFact(birds.atEnd)}, ${sayFact(leaving.liveEach).toLowerCase()}`
          : sayFact(laying?.peak)
      }
    >
      <Lead of={leaving?.on ?? (doTheyLay ? eggsToday : laying?.firstEgg)}>
        {leaving && 1 < leaving.processingDays.length && (
          <p>
            {leaving.processingDays.map((d) => `${d.birds} birds on ${sayDate(d.on)}`).join('; ')}
          </p>
        )}
      </Lead>
      {leaving && <ProcessingWays ways={leaving.processingWays} onChoose={onChoose} />}
      <Facts>
        <Fact of={birds.atEnd} />
        <Fact of={leaving?.liveEach} />
        <Fact of={leaving?.dressedAll} />
        <Fact of={leaving?.freezerNeed} />
        <Fact of={leaving?.freezerBags} />
        <Fact of={laying?.peak} />
        <Fact of={laying?.eggsInYear} />
        <Fact of={birds.cockerelsLeave?.on} />
      </Facts>
      {laying ? (
        <Picture title="Eggs a week, by month">
          <EggChart laying={laying} />
        </Picture>
      ) : (
        <Picture title="Live weight">
          <Chart {...props} of="weight" />
        </Picture>
      )}
      <StoryTasks {...props} part="end" />
      <Mind {...props} part="end" />
      <More
        title={leaving ? 'Weights, the day itself, and the freezer' : 'Months, years and light'}
      >
        <LeavingSection plan={plan} />
      </More>
    </StoryFold>
  );
}

export function CostPart({ onChoose, ...props }: ChoosingProps) {
  const { plan, asked, isSaved } = props;
  const { bill } = plan;
  const sayFact = useSayFact();
  return (
    <StoryFold
      part="cost"
      title="What it costs"
      answer={bill.perBird ? sayFact(bill.perBird) : 'Prices are missing'}
    >
      {bill.leftOut.length === 0 ? (
        <>
          <Lead of={bill.total} />
          <Facts>
            <Fact of={bill.perBird} />
            <Fact of={bill.perKgDressed} />
            <Fact of={bill.perDozen} />
          </Facts>
        </>
      ) : (
        <Lead of={undefined}>
          <p>
            Not known yet. So far, {bill.leftOut.join(', ')}: <Num of={bill.total} />.
          </p>
          <Button component={Link} href={`/farm/${asked.farm.id}/place#prices`} variant="light">
            Give the prices once, for every batch
          </Button>
        </Lead>
      )}
      <Picture title="Where it goes">
        <BillBars bill={bill} />
      </Picture>
      <More title="The bill, line by line">
        <BillSection plan={plan} farm={asked.farm} />
      </More>
      <More title="What it must bring">
        <Suspense fallback="Working it out …">
          <BringSection {...props} />
        </Suspense>
      </More>
      {plan.leaving && (
        <More title="When to stop feeding">
          <Suspense fallback="Working it out …">
            <StopSection {...props} onChoose={onChoose} />
          </Suspense>
        </More>
      )}
      <More title="What moves it most">
        <Suspense fallback="Working it out …">
          <MovesSection plan={plan} asked={asked} />
        </Suspense>
      </More>
      {isSaved && (
        <Button
          component={Link}
          className="no-print"
          variant="light"
          href={`/farm/${asked.farm.id}/compare/${asked.batch.id}`}
        >
          Compare with other ways
        </Button>
      )}
    </StoryFold>
  );
}
