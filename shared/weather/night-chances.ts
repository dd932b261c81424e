import { bothAbove, normalBelow } from '../maths/normal.js';

/** Lows of the nights to come: what is expected, and how far single ones lie from it, °C. */
export interface Nights {
  readonly lowC: ArrayLike<number>;
  readonly sdC: ArrayLike<number>;
}

/** Chance that the low of one night lies below a limit. */
export const chanceBelow = ({ lowC, sdC }: Nights, night: number, limitC: number): number =>
  normalBelow((limitC - lowC[night]!) / sdC[night]!);

/**
 * Chance that at least one of several nights in a row falls below its limit. Each night is like the
 * one before; nights further back tell nothing more, which makes the chance a little too high.
 *
 * Range: checked for likenesses of 0.5 to 0.85. Below one night in 160 the real chance is up to
 * twice as high: lows have a long cold tail.
 *
 * Source: a chain over days by P(X_i above, X_i+1 above) / P(X_i above) with bivariate normal
 * departures.
 *
 * @param limitOf limit of a night by its index
 * @param likeness correlation of one night's departure with the next one's
 */
export function chanceOfColdNight(
  nights: Nights,
  { from, to }: { readonly from: number; readonly to: number },
  limitOf: (night: number) => number,
  likeness: number,
): number {
  const { lowC, sdC } = nights;
  const zOf = (k: number): number => (limitOf(from + k) - lowC[from + k]!) / sdC[from + k]!;
  return chanceOfAnyBelow(to - from, zOf, likeness);
}

/**
 * The same for limits in standard deviations from what is expected.
 *
 * @param zOf limit of a day by its place among them
 */
export const chanceOfAnyBelow = (
  days: number,
  zOf: (day: number) => number,
  likeness: number,
): number => chancesOfAnyBelow(days, zOf, likeness)[days - 1] ?? 0;

/** Chance that at least one of the days up to each is below its limit; it never falls. */
export function chancesOfAnyBelow(
  days: number,
  zOf: (day: number) => number,
  likeness: number,
): Float64Array {
  const chances = new Float64Array(Math.max(0, days));
  if (days <= 0) return chances;
  let z = zOf(0);
  let above = normalBelow(-z);
  chances[0] = within(1 - above);
  for (let day = 1; day < days; day++) {
    const next = zOf(day);
    const alone = normalBelow(-z);
    // So cold that no night is warm enough: nothing to divide by, and nothing left to lose.
    if (alone < 1e-12) return chances.fill(1, day);
    above *= bothAbove(z, next, likeness) / alone;
    chances[day] = within(1 - above);
    z = next;
  }
  return chances;
}

const within = (chance: number): number => Math.min(1, Math.max(0, chance));
