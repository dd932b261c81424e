import type { Random } from '../schedule/random.js';
import type { Climate } from './climate.js';
import type { DayRun } from './day-run.js';
import { normal, TO_TENTH, type DayHabit } from './drawn-year.js';
import { chanceOfWet, wetShare } from './rain-days.js';

/**
 * Years that stand side by side for the usual weather, where only averages are known: a mean rain of
 * 2 mm on every day waters grass otherwise than a shower a week. What depends on the weather is
 * worked out in each of them and averaged, so that no single day is told to be wet.
 *
 * Years are drawn as `drawnRun` draws one, but together, so that few of them do: on every day as many
 * are wet as usual and their rains are spread evenly over what showers bring, and of each two years
 * one is as much warmer as the other is cooler.
 *
 * Source: Richardson, Water Resources Research 17 (1981); drawn in strata.
 *
 * @param years an even number
 */
export function usualYears(
  climate: Climate,
  dayOfYear: Int16Array,
  habit: DayHabit,
  random: Random,
  years: number,
): DayRun[] {
  const runs = Array.from({ length: years }, () => ({
    minC: new Float64Array(dayOfYear.length),
    maxC: new Float64Array(dayOfYear.length),
    rainMm: new Float64Array(dayOfYear.length),
  }));
  const step = Math.sqrt(1 - habit.dayToDay ** 2);
  const off = Float64Array.from({ length: years / 2 }, () => normal(random));
  const isWet = new Uint8Array(years);
  const order = Array.from(runs, (_, year) => year);
  for (let i = 0; i < dayOfYear.length; i++) {
    const day = dayOfYear[i]! - 1;
    const minC = climate.meanMinC[day]!;
    const maxC = climate.meanMaxC[day]!;
    const deviationC = Math.max(0, minC - climate.coldMinC[day]!) / TO_TENTH;
    for (let pair = 0; pair < off.length; pair++) {
      off[pair] = habit.dayToDay * off[pair]! + step * normal(random);
      const warmerC = off[pair]! * deviationC;
      runs[2 * pair]!.minC[i] = minC + warmerC;
      runs[2 * pair]!.maxC[i] = maxC + warmerC;
      runs[2 * pair + 1]!.minC[i] = minC - warmerC;
      runs[2 * pair + 1]!.maxC[i] = maxC - warmerC;
    }
    const meanMm = climate.meanRainMm?.[day] ?? 0;
    if (meanMm <= 0) continue;
    const share = wetShare(meanMm, habit);
    shuffle(order, random);
    const wet = wetOnes(order, isWet, share, habit, random);
    wet.forEach((year, k) => {
      runs[year]!.rainMm[i] = (-Math.log(1 - (k + random()) / wet.length) * meanMm) / share;
    });
  }
  return runs;
}

/** Which years are wet on a day: as many as their chances come to, each as its day before has it. */
function wetOnes(
  order: readonly number[],
  isWet: Uint8Array,
  share: number,
  habit: DayHabit,
  random: Random,
): number[] {
  const wet: number[] = [];
  let sum = random();
  for (const year of order) {
    const before = Math.floor(sum);
    sum += chanceOfWet(share, isWet[year] === 1, habit);
    isWet[year] = before < Math.floor(sum) ? 1 : 0;
    if (isWet[year] === 1) wet.push(year);
  }
  return wet;
}

/** Fisher and Yates. */
function shuffle(order: number[], random: Random): void {
  for (let i = order.length - 1; 0 < i; i--) {
    const j = Math.floor(random() * (i + 1));
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
}
