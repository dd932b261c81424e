import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { BatchPlan } from '../batch-plan.js';
import {
  closedOf,
  liveOfAll,
  NO_DRESSED,
  NO_LIVE,
  notYet,
  without,
  type Closed,
  type LookedBackAt,
} from './closed-batch.js';
import { costLines } from './cost-lines.js';
import { eggsOf } from './eggs-told.js';
import type { OpenedFeed } from './feed-paid.js';
import { line, type RecordLine } from './record-line.js';

/** A batch as it was planned when it was ordered, beside what was told of it. */
export interface HowItWent {
  readonly batchId: string;
  readonly name: string;
  readonly strain: string;
  readonly purpose: BatchPlan['purpose'];
  readonly arrivedOn: PlainDate;
  /** Nobody has told that they came: it is the day of the plan. */
  readonly isArrivalPlanned?: true;
  /** Up to when it is compared: the day the last bird went, or today. */
  readonly upTo: PlainDate;
  readonly isOver: boolean;
  readonly lines: readonly RecordLine[];
  /** Of hens: eggs of one in her first year, as it was planned when they were ordered. */
  readonly plannedEggsPerHen?: number;
}

/** How a batch went: losses, growth, feed, cost, hours and eggs, planned beside told. */
export function howItWent(asked: LookedBackAt): HowItWent {
  const closed = closedOf(asked);
  const { plan, batchId, arrivedOn, upTo, isOver } = closed;
  return {
    batchId,
    name: plan.name,
    strain: plan.strain,
    purpose: plan.purpose,
    arrivedOn,
    ...(closed.sums.arrived ? {} : { isArrivalPlanned: true }),
    upTo,
    isOver,
    ...(plan.laying ? { plannedEggsPerHen: plan.laying.eggsPerHen.value } : {}),
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
      planned: Math.round(alive[0]! - alive[day]! - processedBy(plan, day)),
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

/** Birds that were to be processed up to a day after the arrival, which are no losses. */
const processedBy = ({ leaving, arrivalDate, daily }: Closed['plan'], day: number): number => {
  const days = daily.find(({ id }) => id === 'alive')!.values.length;
  return (
    (leaving?.processingDays ?? [])
      .map(({ on, birds }) => ({ birds, at: daysBetween(arrivalDate, on) }))
      // On the last day of their age they are counted until the evening.
      .reduce((sum, { at, birds }) => sum + (at <= day && at < days - 1 ? birds : 0), 0)
  );
};

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
            note: without(sums),
          }),
          wasteLine(plan.leaving.conversion.value, plan.feed.wasteShare, {
            kg: isOver ? feed?.kg : undefined,
            liveKg,
            missing: notYet(isOver) ?? conversionNeeds(feed, liveKg),
          }),
        ]
      : []),
  ];
}

/** Feed gone over what birds of that weight eat by the plan with nothing spilled. */
function wasteLine(
  conversion: number,
  planned: number,
  told: {
    readonly kg: number | undefined;
    readonly liveKg: number | undefined;
    readonly missing: string | undefined;
  },
): RecordLine {
  const eatenKg = (told.liveKg ?? 0) * (conversion / (1 + planned));
  const actual = told.kg === undefined || eatenKg === 0 ? undefined : told.kg / eatenKg - 1;
  return line('waste', 'Feed gone beyond what they eat', 'share', {
    planned,
    actual,
    missing: told.missing,
    note:
      actual !== undefined && actual < 0
        ? 'they ate less than the table says for their weight'
        : 'spilled, eaten by others, or more appetite than the table’s',
  });
}

const hoursLine = ({ sums: { hours } }: Closed): RecordLine =>
  line('hours', 'Hours of the jobs that were timed', 'h', {
    planned: hours?.reckoned,
    actual: hours?.logged,
    missing: 'no job was ticked off with its hours',
    note: hours && `${hours.times === 1 ? '1 job was' : `${hours.times} jobs were`} timed`,
  });

const ofSome = (birds: number, processed: number): string | undefined =>
  birds === processed ? undefined : `of ${birds} of the ${processed} birds`;

const conversionNeeds = (feed: OpenedFeed | undefined, liveKg: number | undefined) =>
  feed === undefined ? 'no opened feed was told' : liveKg === undefined ? NO_LIVE : undefined;
