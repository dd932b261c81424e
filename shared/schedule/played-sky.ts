import { drawIndex, type Random } from './random.js';
import type { YearSuits } from './work-years.js';

/** Which days suit which work in years that are played, and what of that is foreseen. */
export interface PlayedSky {
  readonly years: number;
  /** Days from one forecast to the next. */
  readonly everyDays: number;
  /** Of each job the kind of day it asks for; -1 where any will do. */
  readonly kindOf: Int16Array;
  /** By year and kind: 1 for every day that suits, as it comes and as it is forecast. */
  readonly real: readonly (readonly Uint8Array[])[];
  readonly forecast: readonly (readonly Uint8Array[])[];
  /** By kind: share of years in which each day suits. */
  readonly usual: readonly Float64Array[];
}

/**
 * The years that work is played through, with a forecast for each: a day comes as forecast in the
 * given share of cases, else any year’s day was forecast, which may happen to be alike. A forecast
 * is made on the first day, for as many days as there are shares, and again when those are over.
 *
 * Jobs with one and the same list of days ask for the same kind of day, in every year.
 *
 * Range: up to 32,767 years and kinds.
 *
 * @param rightShares share of days that come as forecast, the day it is made on first
 */
export function playedSky(
  years: readonly YearSuits[],
  days: number,
  rightShares: readonly number[],
  random: Random,
): PlayedSky {
  const kinds = new Map<Uint8Array, number>();
  const first: number[] = [];
  const kindOf = Int16Array.from(years[0]!, (own, i) => {
    if (!own) return -1;
    if (!kinds.has(own)) first.push(i);
    kinds.set(own, kinds.get(own) ?? kinds.size);
    return kinds.get(own)!;
  });
  const real = years.map((suits) => first.map((i) => suits[i]!));
  const forecast = real.map((own) => {
    const seen = own.map((days) => days.slice());
    for (let day = 0; day < days; day++) {
      if (random() < rightShares[day % rightShares.length]!) continue;
      const other = real[drawIndex(random, real.length)]!;
      seen.forEach((kind, k) => (kind[day] = other[k]![day]!));
    }
    return seen;
  });
  const usual = first.map((_, k) =>
    Float64Array.from(
      { length: days },
      (__, day) => real.reduce((sum, own) => sum + own[k]![day]!, 0) / real.length,
    ),
  );
  return { years: years.length, everyDays: rightShares.length, kindOf, real, forecast, usual };
}
