import { addDays, datesFrom, weekdayOf, type PlainDate } from '../calendar/plain-date.js';
import type { Formula } from '../explain/formula.js';
import {
  datedFact,
  fromFarm,
  fromTable,
  type NumberQuantity,
  type Quantity,
} from '../explain/quantity.js';
import { arrivalAgeDaysOf, hatchesHere } from '../farm/batch-origin.js';
import { LEAST_LEAVE_AGE_DAYS } from '../farm/batch-rules.js';
import type { Batch } from '../farm/batch.js';
import { problemsOfRow } from '../farm/check-row.js';
import type { FarmPicture } from '../farm/picture.js';
import { readyGoalFields, type ReadyGoal } from '../farm/ready-goal.js';
import { FieldError, type FieldProblem } from '../problems/field-problem.js';
import { valuesOf } from '../tables/judgements.js';
import type { Tables } from '../tables/tables.js';
import { formatDate, formatWeekday } from '../units/dates.js';
import { scoreWeek, withoutFixedDates } from './arrival-finder.js';
import type { ArrivalReason } from './candidate-week.js';
import { batchRequest } from './batch-request.js';
import { checkBatch } from './check-batch.js';
import { birdWordsOf } from './bird-words.js';
import { planContext } from './plan-context.js';
import { nightsOfPlace } from './expected-nights.js';
import { largestBatch, type LargestBatch } from './largest-batch.js';
import { liveWeights } from './leaving-weights.js';
import { lifeOf } from './life.js';
import { areHandsUnknown, handsOn } from './hands-of-day.js';
import { birdsOfSettingUp } from './processing-days.js';
import { frostDays } from './place-frost.js';
import type { PlanRequest } from './request.js';
import {
  arrivalsFor,
  orderBy,
  overWanted,
  rightAges,
  slotsFor,
  type DaySpan,
  type RightAges,
} from './slot-weight.js';

export const readyByFormulas = {
  processBy: {
    id: 'process-by',
    title: 'Process by',
    words:
      'The day to be ready by, less the days a carcass rests cold before it is eaten or frozen; the weekday wished, where there is one, on or before that. A booked slot is the day itself.',
    symbols: 'D = ready − rest',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** A day on which chicks could come, to be ready by the day that is wished. */
export interface ReadyArrival {
  readonly arrivalDate: PlainDate;
  /** First eggs, or processing. */
  readonly endDate: PlainDate;
  /** What the batch takes over with the date: its age at processing. */
  readonly leaveAgeDays?: number;
  readonly liveEach?: NumberQuantity;
  readonly score: number;
  readonly isTooLate: boolean;
  /** By when chicks are usually ordered for it, and whether that is past; not of own eggs. */
  readonly orderBy?: Quantity;
  readonly isLateToOrder: boolean;
  /** Live weight over the one wanted, of birds for a slot. */
  readonly over?: NumberQuantity;
  /** What speaks against it, the heaviest first. */
  readonly stops: readonly ArrivalReason[];
}

export interface ReadyBy extends ReadyGoal {
  /** The age nearest to the usual one first; those that have passed last. */
  readonly arrivals: readonly ReadyArrival[];
  /** The day by which they must be processed; not for eggs. */
  readonly processBy?: Quantity;
  /** For a slot: the weight wanted, and the arrivals that make it. */
  readonly slot?: { readonly wanted: NumberQuantity; readonly arrivals: DaySpan };
  /** A slot on which birds of a delivery weigh what is wanted, where this one is off. */
  readonly betterSlot?: Quantity;
  /** Why there is none, and when it could be. */
  readonly none?: string;
  /** For the first of the arrivals. */
  readonly largest?: LargestBatch;
}

/** Days by which birds may be younger or older than usual so that a date is met. */
const MOST_SHIFT_DAYS = 10;
/** Deliveries before the latest one for eggs that are looked at as well. */
const EARLIER_DELIVERIES = 2;

/**
 * The days on which chicks of a batch would have to come, from the end: processed and rested by a
 * date, processed on a slot, or laying by a date; what speaks against each, and how many at most.
 *
 * @throws FieldError when the goal does not fit the batch, or its date is none
 */
export function readyBy(
  picture: FarmPicture,
  tables: Tables,
  batchId: string,
  goal: ReadyGoal,
): ReadyBy {
  const asked = withoutFixedDates(batchRequest(picture, tables, batchId));
  checkBatch(asked);
  checkGoal(asked, goal);
  const request = { ...asked, batch: forGoal(asked.batch, goal) };
  const batches = candidates(request, goal);
  const place = nightsOfPlace(request.climate, request.farm, tables);
  const frost = frostDays(request, tables);
  const points = valuesOf(tables.judgements.arrival);
  const ages = goal.goal === 'slot' ? rightAges(request.batch, request.tables) : undefined;
  const arrivals = batches
    .map((batch): ReadyArrival & { batch: Batch } => {
      const own = { ...request, batch };
      const life = lifeOf(batch, tables);
      const week = scoreWeek({ request: own, points, place, frost }, life, batch.arrivalDate);
      const isTooLate = batch.arrivalDate <= request.today;
      const order = hatchesHere(batch) ? undefined : orderBy(batch.arrivalDate, request.tables);
      const liveEach =
        batch.purpose === 'meat' ? liveWeights(planContext(own)).liveEach : undefined;
      return {
        batch,
        arrivalDate: batch.arrivalDate,
        endDate: endOf(batch, life),
        ...(batch.leaveAgeDays === undefined ? {} : { leaveAgeDays: batch.leaveAgeDays }),
        ...(liveEach ? { liveEach } : {}),
        ...(ages && liveEach ? { over: overWanted(liveEach, ages.wanted) } : {}),
        score: week.score,
        isTooLate,
        ...(order ? { orderBy: order } : {}),
        isLateToOrder: order !== undefined && String(order.value) < request.today,
        stops: week.reasons.filter((r) => 0 < r.points).sort((a, b) => b.points - a.points),
      };
    })
    .sort((a, b) => Number(a.isTooLate) - Number(b.isTooLate));
  const best = arrivals.find((each) => !each.isTooLate);
  const largest = best && largestBatch(planContext({ ...request, batch: best.batch }));
  return {
    ...goal,
    ...(goal.goal === 'eggs' ? {} : { processBy: processBy(request, goal) }),
    arrivals: arrivals.map(({ batch: _batch, ...each }) => each),
    ...(ages
      ? {
          slot: { wanted: ages.wanted, arrivals: arrivalsFor(goal.on, ages, request.tables) },
          ...betterThan(request, goal, best, ages),
        }
      : {}),
    ...(best ? {} : { none: tooLate(request, goal) }),
    ...(largest ? { largest } : {}),
  };
}

/** A slot decides how many there are to be, and who processes them. */
const forGoal = (batch: Batch, { goal, head }: ReadyGoal): Batch =>
  goal === 'slot'
    ? { ...batch, processing: 'hired', ...(head === undefined ? {} : { wantedBirds: head }) }
    : batch;

/**
 * A slot on which the birds would be right: of the delivery that comes nearest to this one, or, where
 * that is too late to order, of the first that can still be ordered. None where this one is right.
 */
function betterThan(
  { tables, today, batch }: PlanRequest,
  { on, weekday = WEDNESDAY }: ReadyGoal,
  best: ReadyArrival | undefined,
  ages: RightAges,
): Pick<ReadyBy, 'betterSlot'> {
  const lead = hatchesHere(batch) ? 0 : tables.judgements.arrival.usualLeadDays.value;
  const first = lastWeekday(addDays(today, lead + 6), weekday);
  const arrival = best && !best.isLateToOrder ? best.arrivalDate : first;
  const slot = slotsFor(arrival, ages, tables).best;
  const isRight =
    best?.over !== undefined &&
    !best.isLateToOrder &&
    Math.abs(best.over.value) <= tables.judgements.birds.slotWeightShare.value * ages.wanted.value;
  return isRight || String(slot.value) === on ? {} : { betterSlot: slot };
}

const endOf = (
  batch: Batch,
  { firstEggAgeDays, lastAgeDays }: ReturnType<typeof lifeOf>,
): PlainDate =>
  addDays(batch.arrivalDate, (firstEggAgeDays ?? lastAgeDays) - arrivalAgeDaysOf(batch));

/** A slot is the day itself; else they rest before they are eaten, on the weekday wished. */
function processBy(
  { batch, tables }: PlanRequest,
  { goal, on }: Pick<ReadyGoal, 'goal' | 'on'>,
): Quantity {
  const { resting } = tables.processing;
  const { processingWeekday: weekday } = batch;
  const rested = addDays(on, -resting.days);
  const isSlot = goal === 'slot';
  const date = isSlot ? on : weekday === undefined ? rested : lastWeekday(rested, weekday);
  return datedFact('Process by', date, readyByFormulas.processBy, [
    fromFarm(isSlot ? 'Slot' : 'Ready by', on, 'date'),
    ...(isSlot ? [] : [fromTable(resting, 'Rest in the cold', resting.days, 'day')]),
    ...(isSlot || weekday === undefined
      ? []
      : [fromFarm('Weekday wished', formatWeekday(weekday), 'text')]),
  ]);
}

/** The last day of the week before that, on which there are hands for the birds, if need be a long one; else the longest. */
function bestDay(request: PlanRequest, by: PlainDate): PlainDate {
  const { batch } = request;
  if (
    batch.processing === 'hired' ||
    batch.processingWeekday !== undefined ||
    areHandsUnknown(request)
  ) {
    return by;
  }
  const days = datesFrom(addDays(by, -6), 7)
    .reverse()
    .map((date) => handsOn(request, date));
  const enough = days.find(({ most }) => batch.wantedBirds <= most);
  // One that is somewhat longer before two, as the batch would be planned.
  const spared = birdsOfSettingUp(request);
  const long = days.find(
    ({ most, mostLong }) => batch.wantedBirds - spared <= most && batch.wantedBirds <= mostLong,
  );
  return (enough ?? long ?? days.reduce((best, day) => (best.most < day.most ? day : best))).date;
}

/** The batch as it would be, once for every delivery that meets the date, the best age first. */
function candidates(request: PlanRequest, { goal, on, weekday = WEDNESDAY }: ReadyGoal): Batch[] {
  const { processingWeekday: _day, targetLiveKg: _target, ...plain } = request.batch;
  const usual = usualDays(request);
  if (goal === 'eggs') {
    const latest = lastWeekday(addDays(on, -usual), weekday);
    return Array.from({ length: 1 + EARLIER_DELIVERIES }, (_, k) => ({
      ...request.batch,
      arrivalDate: addDays(latest, -7 * k),
    }));
  }
  const by = String(processBy(request, { goal, on }).value);
  const end = goal === 'slot' ? by : bestDay(request, by);
  const first = addDays(end, -usual - MOST_SHIFT_DAYS);
  const batches: (Batch & { shift: number })[] = [];
  for (let shift = 0; shift <= 2 * MOST_SHIFT_DAYS; shift++) {
    const arrivalDate = addDays(first, shift);
    if (weekdayOf(arrivalDate) !== weekday) continue;
    const days = usual + MOST_SHIFT_DAYS - shift;
    const leaveAgeDays = days + request.batch.hatchToArrivalDays;
    if (leaveAgeDays < LEAST_LEAVE_AGE_DAYS) continue;
    batches.push({ ...plain, arrivalDate, leaveAgeDays, shift: Math.abs(MOST_SHIFT_DAYS - shift) });
  }
  return batches.sort((a, b) => a.shift - b.shift).map(({ shift: _shift, ...batch }) => batch);
}

const WEDNESDAY = 3;

/** Days from the arrival to the first egg, or to the age at which they usually leave. */
function usualDays({ batch, tables }: PlanRequest): number {
  const { processingWeekday: _any, ...plain } = batch;
  const { firstEggAgeDays, lastAgeDays, arrivalAgeDays } = lifeOf(plain, tables);
  return (firstEggAgeDays ?? lastAgeDays) - arrivalAgeDays;
}

const lastWeekday = (on: PlainDate, weekday: number): PlainDate =>
  addDays(on, -((weekdayOf(on) - weekday + 7) % 7));

function tooLate(request: PlanRequest, { goal, on, weekday = WEDNESDAY }: ReadyGoal): string {
  const { farm, today, tables, batch } = request;
  const { young } = birdWordsOf(tables, batch);
  const lead = tables.judgements.arrival.usualLeadDays.value;
  const arrival = lastWeekday(addDays(today, lead + 6), weekday);
  const rest = goal === 'ready' ? tables.processing.resting.days : 0;
  const soonest = addDays(arrival, usualDays(request) + rest);
  const say = (date: PlainDate): string => formatDate(date, { units: farm.units, today });
  return `It is too late for ${say(on)}. Ordered today, ${young} come about ${say(arrival)}, and it could be ${say(soonest)}.`;
}

/** No slot is on a day on which no bird that is still to come can be ready. */
function tooSoon({ batch, today }: PlanRequest, { goal, on }: ReadyGoal): FieldProblem[] {
  const min =
    goal === 'slot'
      ? addDays(today, 1 + LEAST_LEAVE_AGE_DAYS - batch.hatchToArrivalDays)
      : addDays(today, 1);
  if (min <= on) return [];
  const fix =
    goal !== 'slot'
      ? 'Give a day that is still to come.'
      : on < today
        ? 'This slot is past: give one that is still to come.'
        : 'No bird that is still to come can be ready by then: ask for a later slot.';
  return [{ field: 'on', code: 'out-of-bounds', given: on, min, fix }];
}

function checkGoal(request: PlanRequest, goal: ReadyGoal): void {
  const { purpose } = request.batch;
  const problems = problemsOfRow(readyGoalFields, goal);
  if (!problems.some(({ field }) => field === 'on')) problems.push(...tooSoon(request, goal));
  if ((goal.goal === 'eggs') !== (purpose === 'layers')) {
    problems.push({
      field: 'goal',
      code: 'conflict',
      given: goal.goal,
      fix:
        purpose === 'layers'
          ? 'A batch for eggs is ready with its first eggs: choose eggs.'
          : 'A batch for meat is ready for the table, or for a slot: choose one of these.',
    });
  }
  if (0 < problems.length) throw new FieldError(problems);
}
