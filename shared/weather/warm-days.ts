import { addDays, daysBetween, yearOf, type PlainDate } from '../calendar/plain-date.js';
import type { Climate } from './climate.js';
import { soilTemperatureC, usualSoilC, yearMeanC } from './soil-temperature.js';

/** What has to be how warm, and on how many days in a row. */
export interface Warmth {
  readonly of: 'soil' | 'day';
  readonly atLeastC: number;
  readonly daysInRow: number;
}

export interface WarmPlace {
  readonly climate: Pick<Climate, 'meanMinC' | 'meanMaxC' | 'recent' | 'forecast'>;
  readonly latitudeDeg: number;
}

/** Soil stays as warm as it was when it has been so for so many days. */
export const SOIL_DAYS = 3;

const DAYS = 366;
/** Known weather counts from so many days before the usual date on: a mild spell of midwinter does not. */
const AROUND_DAYS = 30;
const LEAP_YEAR = '2024-01-01';

/**
 * Usual month and day, counted from the coldest of the year on, of the first of some days in a row
 * that are warm enough by the averages; undefined where they always or never are.
 */
export function usualWarmDay(
  { climate, latitudeDeg }: WarmPlace,
  warmth: Warmth,
): string | undefined {
  const values = warmth.of === 'day' ? climate.meanMaxC : usualSoilC(climate, latitudeDeg);
  const coldest = values.indexOf(Math.min(...values));
  if (warmth.atLeastC <= values[coldest]!) return undefined;
  const rolled = Float64Array.from({ length: DAYS }, (_, k) => values[(coldest + k) % DAYS]!);
  const first = firstRun(rolled, warmth);
  return first < 0 ? undefined : addDays(LEAP_YEAR, (coldest + first) % DAYS).slice(5);
}

/**
 * The same in one year: moved to where measured days and the forecast have it, or put off past
 * those that were too cold; else the usual date.
 *
 * @param usual month and day by the averages
 */
export function warmDayIn(
  { climate, latitudeDeg }: WarmPlace,
  warmth: Warmth,
  { usual, year }: { readonly usual: string; readonly year: number },
): PlainDate {
  const usualOn = usual === '02-29' ? addDays(`${year}-03-01`, -1) : `${year}-${usual}`;
  const known = [...(climate.recent ?? []), ...(climate.forecast ?? [])];
  const from = addDays(usualOn, -AROUND_DAYS);
  // The soil needs a month to forget what it began with.
  const first = addDays(from, -AROUND_DAYS);
  const last = addDays(usualOn, AROUND_DAYS + warmth.daysInRow);
  if (!known.some(({ date }) => first <= date && date <= last)) return usualOn;
  const days = daysBetween(first, last);
  const slot = (k: number): number => slotOf(addDays(first, k));
  const minC = Float64Array.from({ length: days }, (_, k) => climate.meanMinC[slot(k)]!);
  const maxC = Float64Array.from({ length: days }, (_, k) => climate.meanMaxC[slot(k)]!);
  for (const day of known) {
    const k = daysBetween(first, day.date);
    if (k < 0 || days <= k) continue;
    minC[k] = day.minC;
    maxC[k] = day.maxC;
  }
  const dayOfYear = Int16Array.from({ length: days }, (_, k) => slot(k) + 1);
  const values =
    warmth.of === 'day'
      ? maxC
      : soilTemperatureC({ minC, maxC, dayOfYear, latitudeDeg, yearMeanC: yearMeanC(climate) });
  const found = firstRun(values.subarray(AROUND_DAYS), warmth);
  return addDays(from, found < 0 ? 2 * AROUND_DAYS : found);
}

const slotOf = (date: PlainDate): number => daysBetween(`${yearOf(date)}-01-01`, date);

/** First of some days in a row that are warm enough; -1 where there are none. */
function firstRun(values: ArrayLike<number>, { atLeastC, daysInRow }: Warmth): number {
  let run = 0;
  for (let day = 0; day < values.length; day++) {
    run = atLeastC <= values[day]! ? run + 1 : 0;
    if (run === daysInRow) return day - daysInRow + 1;
  }
  return -1;
}
