import { addDays } from '../calendar/plain-date.js';
import { yearCurve } from '../maths/year-curve.js';
import { chanceOfAnyBelow } from './night-chances.js';

const DAYS = 366;
/** The coldest month's average low above which frost is no yearly thing, and its dates are loose. */
const LOOSE_FROM_C = 0;
const RARE_FROM_C = 3;

/** Dates of the last spring and first fall frost, as month and day. */
export interface FrostGuess {
  readonly lastFrost: string;
  readonly firstFrost: string;
  /**
   * How far dates can be told: `usual` to about a week, `loose` to one or two, `rare` hardly at all,
   * since many winters go by without frost.
   */
  readonly sureness: 'usual' | 'loose' | 'rare';
}

/**
 * The days by which frost has ended, and from which it begins again, in all but a share of years.
 *
 * Where it freezes in fewer years than that, both are the coldest day of the year, and where it
 * freezes all summer the warmest: dates that are no turn from cold to warm and back.
 *
 * Range: average lows that rise and fall once a year. On 32 stations, from their own averages, the
 * last frost is right to 5 days and the first to 4 on average.
 * Source: a chain over nights as in `night-chances.ts`; spread of lows with the drift of the month
 * taken off.
 *
 * @param sdMinC standard deviation of single lows about the month's average
 * @param likeness correlation of one night's departure with the next one's
 * @param share of years in which frost comes later (earlier): 0.5 for usual dates, 0.1 for safe ones
 */
export function frostFromMeans(
  { minC, sdMinC }: { readonly minC: readonly number[]; readonly sdMinC: readonly number[] },
  { likeness, share }: { readonly likeness: number; readonly share: number },
): FrostGuess {
  const lowC = yearCurve(minC);
  const sdC = yearCurve(withoutDrift(minC, sdMinC));
  const [coldest, warmest] = turnsOf(lowC);
  const zAt = (day: number): number => -lowC[day]! / sdC[day]!;
  const daysUntilFrost = (step: 1 | -1): number | undefined =>
    firstOf((days) => {
      const zOf = (k: number): number => zAt((warmest + step * k + 2 * DAYS) % DAYS);
      return share <= chanceOfAnyBelow(days + 1, zOf, likeness);
    });
  const back = daysUntilFrost(-1);
  const on = daysUntilFrost(1);
  const dayOf = (day: number): string => addDays('2024-01-01', (day + DAYS) % DAYS).slice(5);
  const coldestLowC = Math.min(...minC);
  return {
    lastFrost: dayOf(back === undefined || on === undefined ? coldest : warmest - back),
    firstFrost: dayOf(back === undefined || on === undefined ? coldest : warmest + on),
    sureness: RARE_FROM_C < coldestLowC ? 'rare' : LOOSE_FROM_C <= coldestLowC ? 'loose' : 'usual',
  };
}

/** The coldest and the warmest day. */
function turnsOf(lowC: readonly number[]): [number, number] {
  let [coldest, warmest] = [0, 0];
  lowC.forEach((c, day) => {
    if (c < lowC[coldest]!) coldest = day;
    if (lowC[warmest]! < c) warmest = day;
  });
  return [coldest, warmest];
}

/** The spread of single nights without the rise or fall of the season within the month. */
const withoutDrift = (minC: readonly number[], sdMinC: readonly number[]): number[] =>
  sdMinC.map((sd, month) => {
    const drift = (minC[(month + 1) % 12]! - minC[(month + 11) % 12]!) / 2;
    return Math.max(0.5, Math.sqrt(Math.max(0, sd ** 2 - drift ** 2 / 12)));
  });

/** The fewest days, less than a year, for which something holds that goes on holding. */
function firstOf(holds: (days: number) => boolean): number | undefined {
  let [low, high] = [0, DAYS - 1];
  if (!holds(high)) return undefined;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}
