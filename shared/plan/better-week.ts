import { addDays, weekdayOf, type PlainDate } from '../calendar/plain-date.js';
import type { FarmPicture } from '../farm/picture.js';
import type { Tables } from '../tables/tables.js';
import { findArrivals, type ArrivalWeek } from './arrival-finder.js';

/** A week that suits a batch better than the one it comes in, and what speaks most for it. */
export interface BetterWeek {
  readonly now: ArrivalWeek;
  readonly best: ArrivalWeek;
  /** What takes more points off the week it comes in than off the better one. */
  readonly because: string;
}

/** Weeks on either side that are still the season a household had in mind. */
const WEEKS_AROUND = 8;
/** Points by which a week has to be better to be worth saying. */
const WORTH_SAYING = 10;

/**
 * The best week around the arrival of a batch; undefined where none is better by much.
 *
 * @throws FieldError as `findArrivals` does
 */
export function betterWeek(
  picture: FarmPicture,
  tables: Tables,
  batchId: string,
): BetterWeek | undefined {
  const { arrivalDate } = picture.batches.find(({ id }) => id === batchId)!;
  const weekday = weekdayOf(arrivalDate);
  const search = (from: PlainDate, to: PlainDate, on?: number): ArrivalWeek[] =>
    findArrivals(picture, tables, batchId, {
      from,
      to,
      ...(on === undefined ? {} : { weekday: on }),
    });
  const soonest = addDays(picture.today, tables.judgements.arrival.usualLeadDays.value);
  const first = addDays(arrivalDate, -7 * WEEKS_AROUND);
  const last = addDays(arrivalDate, 7 * WEEKS_AROUND);
  const from = first < soonest ? soonest : first;
  if (last < addDays(from, 7)) return undefined;
  const [now] = search(arrivalDate, arrivalDate, weekday);
  const best = search(from, last).find(({ rank }) => rank === 1);
  if (!now || !best || best.score < now.score + WORTH_SAYING) return undefined;
  const excess = ({ code, points }: ArrivalWeek['reasons'][number]): number =>
    points - best.reasons.reduce((sum, each) => (each.code === code ? sum + each.points : sum), 0);
  const [worst] = [...now.reasons].sort((a, b) => excess(b) - excess(a));
  return { now, best, because: worst!.text };
}
