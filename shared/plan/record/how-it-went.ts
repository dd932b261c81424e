import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { ToldFact } from '../../farm/told-fact.js';
import type { Unit } from '../../units/unit.js';
import type { BatchPlan } from '../batch-plan.js';
import { aliveByTold, sumsOf, type BatchSums } from './batch-sums.js';
import { eggsOf } from './eggs-told.js';
import { openedFeed, type OpenedFeed } from './feed-paid.js';

/** One thing that was planned, beside what came of it. */
export interface RecordLine {
  readonly id: string;
  readonly label: string;
  readonly unit: Unit;
  readonly planned?: number;
  readonly actual?: number;
  /** What would have to be told to know it, or what the number rests on. */
  readonly note?: string;
}

/** A batch as it was planned when it was ordered, beside what was told of it. */
export interface HowItWent {
  readonly batchId: string;
  readonly name: string;
  readonly strain: string;
  readonly purpose: BatchPlan['purpose'];
  readonly arrivedOn: PlainDate;
  /** Up to when it is compared: the day the last bird went, or today. */
  readonly upTo: PlainDate;
  readonly isOver: boolean;
  readonly lines: readonly RecordLine[];
}

interface Asked {
  readonly batchId: string;
  /** Its plan without anything told of it. */
  readonly plan: BatchPlan;
  /** What the farm was told: of the batch, and what was bought. */
  readonly facts: readonly ToldFact[];
  readonly today: PlainDate;
}

/** Everything of a batch that the lines are made from. */
interface Closed extends Asked {
  readonly sums: BatchSums;
  readonly placed: number;
  readonly arrivedOn: PlainDate;
  readonly upTo: PlainDate;
  readonly isOver: boolean;
  readonly feed: OpenedFeed | undefined;
}

/** How a batch went: losses, growth, feed, cost, hours and eggs, planned beside told. */
export function howItWent(asked: Asked): HowItWent {
  const closed = closedOf(asked);
  const { plan, batchId, arrivedOn, upTo, isOver } = closed;
  return {
    batchId,
    name: plan.name,
    strain: plan.strain,
    purpose: plan.purpose,
    arrivedOn,
    upTo,
    isOver,
    lines: [
      ...headLines(closed),
      ...weightLines(closed),
      ...feedLines(closed),
      ...costLines(closed),
      ...eggsOf(closed),
      hoursLine(closed),
    ],
  };
}

function closedOf(asked: Asked): Closed {
  const { batchId, plan, facts, today } = asked;
  const sums = sumsOf(batchId, facts);
  const placed = sums.arrived?.alive ?? plan.birds.chicksPlaced.value;
  const left = aliveByTold(batchId, facts, { placed, on: today });
  const isOver = sums.saidLastOn !== undefined || left === 0;
  const ends = facts.filter(
    (fact) =>
      fact.about === batchId &&
      fact.takenBackAt === undefined &&
      ['died', 'processed', 'gone'].includes(fact.kind),
  );
  const last = ends
    .map(({ on }) => on)
    .sort()
    .at(-1);
  const upTo = isOver ? (sums.saidLastOn ?? last ?? today) : today;
  return {
    ...asked,
    sums,
    placed,
    arrivedOn: sums.arrived?.on ?? plan.arrivalDate,
    upTo,
    isOver,
    feed: openedFeed(sums.opened, facts, { plan, until: upTo }),
  };
}

function headLines({ plan, sums, placed, isOver, arrivedOn, upTo }: Closed): RecordLine[] {
  const alive = plan.daily.find(({ id }) => id === 'alive')!.values;
  const day = Math.min(alive.length - 1, Math.max(0, daysBetween(arrivedOn, upTo)));
  const isTold = sums.arrived !== undefined || 0 < sums.died;
  const missing = Math.max(0, placed - sums.died - sums.processed - sums.sold - sums.given);
  // Those that are missing when the last one is said to have gone were lost without a word.
  const lost = sums.died + (sums.saidLastOn === undefined ? 0 : missing);
  return [
    line('came', 'Came alive', 'count', {
      planned: plan.birds.chicksPlaced.value,
      actual: sums.arrived?.alive,
      missing: 'how many came was not told',
    }),
    line('lost', isOver ? 'Lost' : 'Lost so far', 'count', {
      planned: Math.round(alive[0]! - alive[day]!),
      actual: isTold || sums.saidLastOn !== undefined ? lost : undefined,
      missing: 'no dead bird was told, nor how many came',
    }),
    ...(plan.leaving || 0 < sums.processed
      ? [
          line('processed', 'Processed', 'count', {
            planned: plan.leaving?.birdsToProcess,
            actual: sums.processed === 0 ? undefined : sums.processed,
            missing: 'no processing was told',
          }),
        ]
      : []),
    ...(['sold', 'given'] as const).flatMap((how) =>
      sums[how] === 0 ? [] : [line(how, WENT[how], 'count', { actual: sums[how] })],
    ),
  ];
}

const NO_LIVE = 'no live weight was told with the processing';
const NO_DRESSED = 'no dressed weight was told with the processing';
const WENT = { sold: 'Sold alive', given: 'Given away alive' } as const;

function weightLines({ plan, sums, arrivedOn }: Closed): RecordLine[] {
  const { leaving } = plan;
  if (!leaving) return [];
  const { live, dressed, processed, lastProcessedOn, packs } = sums;
  const ageAtArrival = daysBetween(plan.hatchDate, plan.arrivalDate);
  const hatched = addDays(arrivedOn, -ageAtArrival);
  return [
    line('age', 'Age at the last processing', 'day', {
      planned: leaving.age.value,
      actual: lastProcessedOn === undefined ? undefined : daysBetween(hatched, lastProcessedOn),
      missing: 'no processing was told',
    }),
    line('live-each', 'Live weight each', 'kg', {
      planned: leaving.liveEach.value,
      actual: live && live.kg / live.birds,
      missing: NO_LIVE,
      note: live && ofSome(live.birds, processed),
    }),
    line('dressed-each', 'Dressed weight each', 'kg', {
      planned: leaving.dressedEach.value,
      actual: dressed && dressed.kg / dressed.birds,
      missing: NO_DRESSED,
      note: dressed && ofSome(dressed.birds, processed),
    }),
    ...(packs === undefined
      ? []
      : [line('packs', 'Packs in the freezer', 'count', { actual: packs })]),
  ];
}

function feedLines({ plan, sums, feed, isOver }: Closed): RecordLine[] {
  const liveKg = liveOfAll(sums);
  return [
    line('feed', isOver ? 'Feed' : 'Feed opened so far', 'kg', {
      // The plan is of their whole life: half a life is not held against it.
      planned: isOver ? plan.feed.total.value : undefined,
      actual: feed?.kg,
      missing: 'no opened feed was told',
    }),
    ...(plan.leaving
      ? [
          line('conversion', 'Feed for one of live weight', 'ratio', {
            planned: plan.leaving.conversion.value,
            actual: isOver && feed && liveKg ? feed.kg / liveKg : undefined,
            missing: notYet(isOver) ?? conversionNeeds(feed, liveKg),
          }),
        ]
      : []),
  ];
}

function costLines({ plan, sums, feed, isOver }: Closed): RecordLine[] {
  const { bill } = plan;
  const isFeed = new Set(plan.feed.phases.map(({ name }) => `${name} feed`));
  const restMinor = bill.lines
    .filter(({ label }) => !isFeed.has(label))
    .reduce((sum, { cost }) => sum + (cost?.value ?? 0), 0);
  const plannedFeed = bill.total.value - restMinor;
  const cost = feed?.costMinor === undefined ? undefined : restMinor + feed.costMinor;
  const actual = isOver ? cost : undefined;
  const needs = notYet(isOver) ?? (feed ? 'no price of feed is known' : 'no opened feed was told');
  const rests = [
    feed?.priceIs === 'planned' ? 'feed at the planned price' : 'feed as bought',
    'the rest as planned',
    ...bill.leftOut,
  ].join(', ');
  const liveKg = liveOfAll(sums);
  const dressedKg = scaled(sums.dressed, sums.processed);
  const each = (kg: number | undefined): number | undefined =>
    actual === undefined || kg === undefined ? undefined : actual / kg;
  return [
    line('feed-cost', 'Feed, what it cost', 'money', {
      planned: plannedFeed,
      actual: isOver ? feed?.costMinor : undefined,
      missing: needs,
    }),
    line('cost', 'All of it, what it cost', 'money', {
      planned: bill.total.value,
      actual,
      missing: needs,
      note: rests,
    }),
    ...(plan.leaving
      ? [
          line('cost-live', 'Cost of live weight', 'moneyPerKg', {
            planned: bill.perKgLive?.value,
            actual: each(liveKg),
            missing: actual === undefined ? needs : NO_LIVE,
          }),
          line('cost-dressed', 'Cost of dressed weight', 'moneyPerKg', {
            planned: bill.perKgDressed?.value,
            actual: each(dressedKg),
            missing: actual === undefined ? needs : NO_DRESSED,
          }),
        ]
      : []),
  ];
}

const hoursLine = ({ sums: { hours } }: Closed): RecordLine =>
  line('hours', 'Hours of the jobs that were timed', 'h', {
    planned: hours?.reckoned,
    actual: hours?.logged,
    missing: 'no job was ticked off with its hours',
    note: hours && `${hours.times === 1 ? '1 job was' : `${hours.times} jobs were`} timed`,
  });

/** Live weight of all that were processed: those not weighed are taken to weigh as the others. */
const liveOfAll = (sums: BatchSums): number | undefined => scaled(sums.live, sums.processed);

const scaled = (weight: BatchSums['live'], birds: number): number | undefined =>
  weight && (weight.kg / weight.birds) * birds;

const ofSome = (birds: number, processed: number): string | undefined =>
  birds === processed ? undefined : `of ${birds} of the ${processed} birds`;

const notYet = (isOver: boolean): string | undefined =>
  isOver ? undefined : 'known when the last bird is gone';

const conversionNeeds = (feed: OpenedFeed | undefined, liveKg: number | undefined) =>
  feed === undefined ? 'no opened feed was told' : liveKg === undefined ? NO_LIVE : undefined;

/** A line: what is missing is said only where the number is. */
function line(
  id: string,
  label: string,
  unit: Unit,
  {
    planned,
    actual,
    missing,
    note,
  }: {
    readonly planned?: number | undefined;
    readonly actual?: number | undefined;
    readonly missing?: string | undefined;
    readonly note?: string | undefined;
  },
): RecordLine {
  const said = actual === undefined ? missing : note;
  return {
    id,
    label,
    unit,
    ...(planned === undefined ? {} : { planned }),
    ...(actual === undefined ? {} : { actual }),
    ...(said === undefined ? {} : { note: said }),
  };
}
