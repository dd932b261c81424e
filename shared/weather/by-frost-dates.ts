import { dayOfYear } from '../calendar/plain-date.js';
import { chanceOfAnyBelow } from './night-chances.js';

const DAYS = 366;
/** A place differs from the fit of many by about this much in its spread. */
const SPREAD_FACTORS = [0.7, 1.4] as const;
/** A farm is no more than this much colder or warmer than the averages typed for it, °C. */
const SHIFTS_C = [6, -6] as const;
const HALVINGS = 10;

/** The year’s lows, and how far single nights lie from them, by day of the year, °C. */
export interface YearOfLows {
  readonly lowC: Float64Array;
  readonly sdC: Float64Array;
}

/**
 * Lows of a year whose frost ends and begins on the dates the household knows: in half of the years
 * when these are the usual dates, in one year of ten later (earlier) when they are the safe ones.
 *
 * Nights are taken to differ more or less from their average, within what places do; what that
 * cannot explain, such as a frost pocket, makes them colder or warmer. Between the two dates it goes
 * over from one to the other. Dates that are no turn from cold to warm and back change nothing.
 *
 * Range: spread by 0.7 to 1.4, lows by 6 °C. Source: a chain over nights as in `night-chances.ts`;
 * on 25 real records it gives the usual last frost within 2.7 days on average.
 */
export function byFrostDates(
  year: YearOfLows,
  dates: { readonly last: string; readonly first: string; readonly isSafe: boolean },
  likeness: number,
): YearOfLows {
  const last = dayOfYear(`2024-${dates.last}`) - 1;
  const first = dayOfYear(`2024-${dates.first}`) - 1;
  const summer = (first - last + DAYS) % DAYS;
  let warmest = last;
  for (let k = 0; k <= summer; k++) {
    const day = (last + k) % DAYS;
    if (year.lowC[warmest]! < year.lowC[day]!) warmest = day;
  }
  if (warmest === last || warmest === first) return year;
  const share = dates.isSafe ? 0.1 : 0.5;
  // Frost on the last day or later, until the warmest day; on the first or earlier, since then.
  const spring = changeFor(share, (change) =>
    frostWithin(year, { from: last, days: (warmest - last + DAYS) % DAYS }, change, likeness),
  );
  const fall = changeFor(share, (change) =>
    frostWithin(
      year,
      { from: warmest, days: ((first - warmest + DAYS) % DAYS) + 1 },
      change,
      likeness,
    ),
  );
  const partOf = (day: number): number => {
    const since = (day - last + DAYS) % DAYS;
    return since <= summer ? since / summer : (DAYS - since) / (DAYS - summer);
  };
  const between = (a: number, b: number, day: number): number => a + (b - a) * partOf(day);
  return {
    lowC: year.lowC.map((c, day) => c + between(spring.shiftC, fall.shiftC, day)),
    sdC: year.sdC.map((c, day) => c * between(spring.spread, fall.spread, day)),
  };
}

interface Change {
  readonly spread: number;
  readonly shiftC: number;
}

/** The change with which frost comes in a share of years: of the spread, and then of the lows. */
function changeFor(share: number, frostAt: (change: Change) => number): Change {
  const spread = halved(SPREAD_FACTORS, (x) => frostAt({ spread: x, shiftC: 0 }) < share);
  const isEnough = SPREAD_FACTORS[0] + 0.01 < spread && spread < SPREAD_FACTORS[1] - 0.01;
  if (isEnough) return { spread, shiftC: 0 };
  return { spread, shiftC: halved(SHIFTS_C, (x) => frostAt({ spread, shiftC: x }) < share) };
}

/** Where something no longer holds, between an end where it does and one where it does not. */
function halved([from, to]: readonly [number, number], holds: (x: number) => boolean): number {
  let [yes, no] = [from, to];
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (yes + no) / 2;
    if (holds(middle)) yes = middle;
    else no = middle;
  }
  return (yes + no) / 2;
}

/** Chance of a low at or below 0 °C on any of some days in a row. */
function frostWithin(
  { lowC, sdC }: YearOfLows,
  { from, days }: { readonly from: number; readonly days: number },
  { spread, shiftC }: Change,
  likeness: number,
): number {
  const zOf = (k: number): number => {
    const day = (from + k) % DAYS;
    return -(lowC[day]! + shiftC) / (sdC[day]! * spread);
  };
  return chanceOfAnyBelow(days, zOf, likeness);
}
