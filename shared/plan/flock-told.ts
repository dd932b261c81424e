import { daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { Batch } from '../farm/batch.js';
import { lastLeft, type HeadChange } from '../farm/head-count.js';

/** How many birds of a batch there are by what was told. Days count from the arrival. */
export interface FlockTold {
  /** Alive when they came; undefined when no arrival was told. */
  readonly came: number | undefined;
  /** The last day on which the count is known: today, or the day the last bird went. */
  readonly knownTo: number;
  /** Whether deaths are told, so that those there are is a count; else the usual losses are taken. */
  readonly isCounted: boolean;
  /** Died by the end of each day up to `knownTo`. */
  readonly died: Float64Array;
  /** Processed, sold or given by the end of each day up to `knownTo`. */
  readonly left: Float64Array;
  /** The day on which the last bird died or went; undefined while there are some. */
  readonly overOn: number | undefined;
}

/** A batch as it came: on the day it came, with the birds that were alive. */
export function asItCame<Row extends Batch>(batch: Row, changes: readonly HeadChange[]): Row {
  const arrival = changes.findLast(({ change }) => change === 'arrived');
  return arrival
    ? { ...batch, arrivalDate: arrival.date, orderedBirds: Math.max(1, arrival.birds) }
    : batch;
}

/**
 * What was told of the heads of a batch; undefined when nothing was.
 *
 * @param batch as it came
 * @param placed birds that came, by order or told
 */
export function flockTold(
  batch: Pick<Batch, 'arrivalDate'>,
  changes: readonly HeadChange[],
  { today, placed }: { readonly today: PlainDate; readonly placed: number },
): FlockTold | undefined {
  if (changes.length === 0) return undefined;
  const dayOf = (date: PlainDate): number => Math.max(0, daysBetween(batch.arrivalDate, date));
  const arrival = changes.findLast(({ change }) => change === 'arrived');
  const isCounted = arrival !== undefined || changes.some(({ change }) => change === 'died');
  const last = Math.max(dayOf(today), ...changes.map(({ date }) => dayOf(date)));
  const died = new Float64Array(last + 1);
  const left = new Float64Array(last + 1);
  for (const { change, date, birds } of changes) {
    if (change === 'arrived') continue;
    const to = change === 'died' ? died : left;
    for (let day = dayOf(date); day <= last; day++) to[day]! += birds;
  }
  const lastOn = lastLeft(changes, placed);
  const overOn = lastOn === undefined ? undefined : dayOf(lastOn);
  // Those that are missing at the end were lost without a word, on a day that nobody knows.
  if (overOn !== undefined) died[overOn] = Math.max(died[overOn]!, placed - left[overOn]!);
  const isKnown = isCounted || overOn !== undefined;
  return { came: arrival?.birds, knownTo: overOn ?? last, isCounted: isKnown, died, left, overOn };
}

/**
 * Birds there are on a day.
 *
 * @param usual share of those placed that usually lives to a day
 */
export function aliveOn(
  told: FlockTold | undefined,
  placed: number,
  usual: (day: number) => number,
  day: number,
): number {
  if (!told) return placed * usual(day);
  const { knownTo, isCounted, died, left, overOn } = told;
  if (overOn !== undefined && overOn < day) return 0;
  // Those that die or go last are there until they do.
  const counted = Math.min(day, knownTo) - (day === overOn ? 1 : 0);
  const gone = counted < 0 ? 0 : left[counted]!;
  const dead = counted < 0 ? 0 : died[counted]!;
  if (!isCounted) return Math.max(0, placed * usual(day) - gone);
  const there = Math.max(0, placed - dead - gone);
  return day <= knownTo ? there : (there * usual(day)) / usual(knownTo);
}
