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

/** What is foreseen of days to come. */
export interface Foreseen {
  /** Share of days that come as forecast, the day it is made on first. */
  readonly rightShares: readonly number[];
  /** Of each job the days in a row that make a day suit it; one where it is left out. */
  readonly runDays?: readonly number[];
}

/**
 * The years that work is played through, with a forecast for each: a day comes as forecast in the
 * given share of cases, else any year’s day was forecast, which may happen to be alike. A forecast
 * is made on the first day, for as many days as there are shares, and again when those are over. A
 * day that suits because of a run of days comes as forecast only where all of them do.
 *
 * Jobs with one and the same list of days ask for the same kind of day, in every year.
 *
 * Range: up to 32,767 years and kinds.
 */
export function playedSky(
  years: readonly YearSuits[],
  days: number,
  { rightShares, runDays }: Foreseen,
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
  const forecast = real.map((own, year) => {
    const seen = Int16Array.from({ length: days }, (_, day) =>
      random() < rightShares[day % rightShares.length]! ? year : drawIndex(random, real.length),
    );
    return own.map((_, k) => {
      const run = runDays?.[first[k]!] ?? 1;
      return Uint8Array.from(seen, (__, day) => real[seenOf(seen, year, day, run)]![k]![day]!);
    });
  });
  const usual = first.map((_, k) =>
    Float64Array.from(
      { length: days },
      (__, day) => real.reduce((sum, own) => sum + own[k]![day]!, 0) / real.length,
    ),
  );
  return { years: years.length, everyDays: rightShares.length, kindOf, real, forecast, usual };
}

/** The year whose weather is forecast for a run of days: another’s where one of them does not hold. */
function seenOf(seen: Int16Array, year: number, day: number, runDays: number): number {
  const last = Math.min(day + runDays, seen.length);
  for (let each = day; each < last; each++) if (seen[each] !== year) return seen[each]!;
  return year;
}
