import type { Formula } from '../../explain/formula.js';
import type { GrazingProblem } from '../../pasture/grazing-problem.js';
import type { SeasonBooks } from '../../pasture/season-books.js';
import { bittenStand, growOn, massOf, setMass, type Sward } from '../../pasture/sward.js';
import { YEAR } from './pasture-span.js';

export const winterGrassFormulas = {
  winterGrass: {
    id: 'grass-meanwhile',
    title: 'Grass from the end of the plan to grass again',
    words:
      'What stands when the plan ends, grown on in the usual weather until snow comes, or where none does until the herds turn out; less what has to stand then for the next year, as it stands where a paddock was grazed to its residual for the last time: on the day on which the herds went on hay the winter before, where that is typed, else some weeks before the year ends. Of it the share that is eaten, and no more than the need of the days without snow. Grass that stands in snow is not counted, even where it can be grazed in spring.',
    symbols: 'G = min(F_day·days, Σ A·max(0, W − W_next)·u)',
    sources: ['JOUVEN_2006'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/**
 * What herds eat of the grass after a plan, kg: never what the spring of the next year begins with.
 *
 * @param days after the plan until they turn out
 * @param left day on which each paddock is grazed for the last time before winter
 */
export function winterGrass(
  problem: GrazingProblem,
  { massKgPerHa }: SeasonBooks,
  { perDayKg, days, left }: { perDayKg: number; days: number; left: readonly number[] },
): number {
  const { swards, usualWeather, harvestShare, to } = problem;
  // What is left when the new year has begun is what its spring begins with.
  if (YEAR <= to) return 0;
  const until = firstSnow(usualWeather, to, to + days);
  let kg = 0;
  swards.forEach((sward, p) => {
    const usual = problem.usualFrom(p, 0);
    const stands = standOn(usual, { from: to, kgPerHa: massKgPerHa[p]![to - 1]!, until });
    const wanted = standOn(usual, { from: left[p]!, kgPerHa: sward.residualKgPerHa, until });
    kg += Math.max(0, stands - wanted) * sward.areaHa * harvestShare[0]!;
  });
  return Math.min(perDayKg * (until - to), kg);
}

/** Days are those of one year, which ends some days before the next begins: those are below nothing. */
const inYear = (day: number, { days }: { readonly days: readonly unknown[] }): number =>
  day < days.length ? day : day - YEAR;

/** First day with snow, or `from` where it lies already; at the latest `to`. */
function firstSnow({ isSnow, days }: GrazingProblem['usualWeather'], from: number, to: number) {
  for (let day = from - 1; day < to; day++) {
    const i = inYear(day, { days });
    if (isSnow[i < 0 ? days.length - 1 : i] === 1) return Math.max(from, day);
  }
  return to;
}

/** What stands on a morning where nothing has eaten of it since another, kg/ha. */
function standOn(
  sward: Sward,
  { from, kgPerHa, until }: { from: number; kgPerHa: number; until: number },
): number {
  const state = bittenStand(sward.residualKgPerHa);
  setMass(state, kgPerHa);
  for (let day = from; day < until; day++) {
    const i = inYear(day, sward.weather);
    if (0 <= i) growOn(sward, state, i);
  }
  return massOf(state);
}
