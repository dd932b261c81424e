import type { Random } from '../schedule/random.js';
import type { Climate } from './climate.js';
import type { DayRun } from './day-run.js';
import { randomRain, typicalRain, type RainHabit } from './rain-days.js';

/** How days follow each other: needed where only their means are known. */
export interface DayHabit extends RainHabit {
  /** Likeness (correlation) of one day's temperature to the last's, 0 to 1. */
  readonly dayToDay: number;
}

/** Standard deviations between the mean and the tenth percentile of a normal distribution. */
export const TO_TENTH = 1.2816;

export const WHOLE_YEAR = Int16Array.from({ length: 366 }, (_, k) => k + 1);

/**
 * The usual weather of days: mean temperatures, and as many wet days as come in most years. They
 * fall on the same dates whatever day is the first, so that a plan made tomorrow finds the weather
 * of the one made today.
 */
export function usualRun(climate: Climate, dayOfYear: Int16Array, habit: RainHabit): DayRun {
  const rain = typicalRain(meansOn(climate.meanRainMm, WHOLE_YEAR), habit);
  return {
    minC: meansOn(climate.meanMinC, dayOfYear),
    maxC: meansOn(climate.meanMaxC, dayOfYear),
    rainMm: meansOn(rain, dayOfYear),
  };
}

/**
 * One year's weather drawn by chance: wet days by a chain of two states, and a departure of the
 * temperature from its mean that is like the day before's. As many nights are colder than the
 * climate's cold night as its name says: one in ten.
 *
 * @param spreadFactor on the departures, where more is known of them than the climate says
 *
 * Left out: wet days are not cooler than dry ones, and lows and highs depart together.
 *
 * Source: Richardson, "Stochastic simulation of daily precipitation, temperature, and solar
 * radiation", Water Resources Research 17 (1981), with one series instead of three.
 */
export function drawnRun(
  climate: Climate,
  dayOfYear: Int16Array,
  habit: DayHabit,
  random: Random,
  spreadFactor = 1,
): DayRun {
  const minC = meansOn(climate.meanMinC, dayOfYear);
  const maxC = meansOn(climate.meanMaxC, dayOfYear);
  const rainMm = randomRain(meansOn(climate.meanRainMm, dayOfYear), habit, random);
  const step = Math.sqrt(1 - habit.dayToDay ** 2);
  let off = normal(random);
  for (let i = 0; i < dayOfYear.length; i++) {
    const toColdC = Math.max(0, minC[i]! - climate.coldMinC[dayOfYear[i]! - 1]!);
    const deviationC = (spreadFactor * toColdC) / TO_TENTH;
    off = habit.dayToDay * off + step * normal(random);
    minC[i]! += off * deviationC;
    maxC[i]! += off * deviationC;
  }
  return { minC, maxC, rainMm };
}

function meansOn(year: ArrayLike<number> | undefined, dayOfYear: Int16Array): Float64Array {
  return Float64Array.from(dayOfYear, (day) => year?.[day - 1] ?? 0);
}

/** Box and Muller (1958). */
export const normal = (random: Random): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
