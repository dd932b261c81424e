import { addDays, weekdayOf, type PlainDate } from '../calendar/plain-date.js';
import type { FarmPicture } from '../farm/picture.js';
import type { Tables } from '../tables/tables.js';
import { findArrivals, type ArrivalWeek } from './arrival-finder.js';
import { planBatch } from './batch-plan.js';
import { pointsOf } from './weeks-beside.js';

/** A week that suits a batch better than the one it comes in, and what speaks most for it. */
export interface BetterWeek {
  readonly now: ArrivalWeek;
  readonly best: ArrivalWeek;
  /** What takes more points off the week it comes in than off the better one. */
  readonly because: string;
  /** What the heat of the brooder costs in each; left out where it is much the same. */
  readonly heat?: { readonly nowMinor: number; readonly bestMinor: number };
}

/** Weeks on either side that are still the season a household had in mind. */
const WEEKS_AROUND = 8;
const YEAR_DAYS = 363;
/** Points by which a week has to be better to be worth saying. */
const WORTH_SAYING = 10;
/** What takes no more than so many points more off one week than off another is alike in both. */
const ALIKE_POINTS = 5;
/** A share by which heat has to be cheaper to be worth saying. */
const CHEAPER = 0.2;

/**
 * The best week around the arrival of a batch; undefined where none is better by much. Where what
 * weighs most against the day that was picked weighs as much in all weeks around it (no chicks go
 * out in a winter), it is the first good week of the year instead. Short notice is not held against
 * the day: whoever picked one knows whether the birds are to be had.
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
  if (!now) return undefined;
  const [heaviest] = [...against(now)].sort((a, b) => b.points - a.points);
  if (!heaviest) return undefined;
  const isCured = (week: ArrivalWeek): boolean =>
    ALIKE_POINTS < heaviest.points - pointsOf(week, heaviest.code);
  const around = search(from, last);
  const best =
    firstBest(around.filter(isCured), 0) ??
    firstBest(search(soonest, addDays(soonest, YEAR_DAYS)).filter(isCured), WORTH_SAYING) ??
    firstBest(around, 0);
  if (!best || lost(now) < lost(best) + WORTH_SAYING) return undefined;
  const excess = ({ code, points }: ArrivalWeek['reasons'][number]): number =>
    points - pointsOf(best, code);
  const [worst] = [...against(now)].sort((a, b) => excess(b) - excess(a));
  return { now, best, because: worst!.text, ...heatOf(picture, tables, batchId, best) };
}

const against = ({ reasons }: ArrivalWeek): ArrivalWeek['reasons'] =>
  reasons.filter(({ code, points }) => 0 < points && code !== 'lead-time');

const lost = (week: ArrivalWeek): number =>
  against(week).reduce((sum, { points }) => sum + points, 0);

/** The first of the weeks that lose about as few points as any. */
function firstBest(weeks: readonly ArrivalWeek[], within: number): ArrivalWeek | undefined {
  const least = Math.min(...weeks.map(lost));
  return weeks.find((week) => lost(week) <= least + within);
}

/** What the heat costs in the week it comes in and in the better one. */
function heatOf(
  picture: FarmPicture,
  tables: Tables,
  batchId: string,
  { arrivalDate }: ArrivalWeek,
): Pick<BetterWeek, 'heat'> {
  const moved = picture.batches.map((each) =>
    each.id === batchId ? { ...each, arrivalDate } : each,
  );
  const [nowMinor, bestMinor] = [picture, { ...picture, batches: moved }].map(
    (each) => planBatch(each, tables, batchId).heat?.cost.value,
  );
  return nowMinor !== undefined && bestMinor !== undefined && bestMinor < nowMinor * (1 - CHEAPER)
    ? { heat: { nowMinor, bestMinor } }
    : {};
}
