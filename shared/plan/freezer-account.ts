import { addDays, daysBetween, type PlainDate } from '../calendar/plain-date.js';

/** Birds of a batch that come to a freezer on a day. */
export interface Packed {
  readonly batchName: string;
  readonly freezerId: string;
  readonly on: PlainDate;
  readonly birds: number;
  readonly literEach: number;
}

/** How fast a household eats: birds a week, the oldest first, or each batch evenly over some days. */
export type EatingPace = { readonly birdsPerWeek: number } | { readonly evenlyOverDays: number };

/** What is left of every delivery on a day, in birds, as the deliveries are listed. */
export function leftOn(
  packed: readonly Packed[],
  pace: EatingPace,
  date: PlainDate,
): readonly number[] {
  return 'birdsPerWeek' in pace
    ? leftOldestFirst(packed, pace.birdsPerWeek / 7, date)
    : packed.map(({ on, birds }) =>
        date < on ? 0 : birds * Math.max(0, 1 - daysBetween(on, date) / pace.evenlyOverDays),
      );
}

/** @param packed in the order of their days */
function leftOldestFirst(
  packed: readonly Packed[],
  birdsPerDay: number,
  date: PlainDate,
): readonly number[] {
  const left = packed.map(() => 0);
  const eat = (birds: number): void => {
    let hungry = birds;
    for (let k = 0; k < left.length && 0 < hungry; k++) {
      const eaten = Math.min(left[k]!, hungry);
      left[k]! -= eaten;
      hungry -= eaten;
    }
  };
  const there = packed.filter(({ on }) => on <= date);
  there.forEach(({ on, birds }, k) => {
    left[k] = birds;
    eat(birdsPerDay * daysBetween(on, there[k + 1]?.on ?? date));
  });
  return left;
}

/** First day on which nothing is left of any of the deliveries that are asked for. */
export function eatenUpOn(
  packed: readonly Packed[],
  pace: EatingPace,
  isAsked: (each: Packed) => boolean,
): PlainDate {
  const last = packed.filter(isAsked).at(-1)!.on;
  if ('evenlyOverDays' in pace) return addDays(last, pace.evenlyOverDays);
  const upTo = packed.slice(0, packed.findLastIndex(isAsked) + 1);
  const birds = leftOn(upTo, pace, last).reduce((sum, left) => sum + left, 0);
  return addDays(last, Math.ceil((7 * birds) / pace.birdsPerWeek - 1e-9));
}
