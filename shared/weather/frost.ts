import { round6 } from '../explain/quantity.js';
import { addDays } from '../calendar/plain-date.js';
import { percentile, type DailyWeather } from './climate.js';
import type { ColdNight, RecordedFrost } from './recorded-frost.js';

/** Dates of a turning point in few, half and most years, as month and day; few and most as asked. */
export interface DateSpread {
  readonly tenth: string;
  readonly half: string;
  readonly ninetieth: string;
}

/** When frost ends in spring and begins in fall at one threshold. */
export interface FrostDates {
  readonly thresholdC: number;
  /** Years looked at in each half, and those of them in which it froze. */
  readonly springs: number;
  readonly springsWithFrost: number;
  readonly autumns: number;
  readonly autumnsWithFrost: number;
  /** The last frost of spring; left out when it froze in no spring. */
  readonly lastSpring?: DateSpread;
  /** The first frost of fall. */
  readonly firstAutumn?: DateSpread;
}

/** A half-year with so many days missing is not counted, as state climate offices do. */
const MOST_MISSING = 9;
/** Percentiles are given on the calendar of a common year. */
const COMMON_YEAR = 2023;
const COMMON_DAYS = 365;

/** A half-year: its first month and day, and its days on the calendar of a common year. */
interface Half {
  readonly start: string;
  readonly days: number;
}

/** The year is parted after 31 July, and half a year later south of the equator. */
const NORTH = { spring: { start: '01-01', days: 212 }, autumn: { start: '08-01', days: 153 } };
const SOUTH = { spring: { start: '07-01', days: 215 }, autumn: { start: '02-01', days: 150 } };
const halvesAt = (latitudeDeg: number): typeof NORTH => (latitudeDeg < 0 ? SOUTH : NORTH);

/**
 * The frost of a daily record, a few nights of each half-year. 29 February counts as the day
 * before; a half-year with ten or more missing days is left out.
 *
 * @param history in date order
 */
export function recordedFrost(
  history: readonly DailyWeather[],
  latitudeDeg: number,
): RecordedFrost {
  const { spring, autumn } = halvesAt(latitudeDeg);
  return {
    springs: lowsOf(history, spring).map((lows) => coldestYet(lows, lows.length - 1, -1)),
    autumns: lowsOf(history, autumn).map((lows) => coldestYet(lows, 0, 1)),
  };
}

/** Nights that are colder than all before them, counted from one day on or back. */
function coldestYet(lows: Float64Array, from: number, step: 1 | -1): ColdNight[] {
  const nights: ColdNight[] = [];
  let coldest = Infinity;
  for (let day = from; 0 <= day && day < lows.length; day += step)
    if (lows[day]! < coldest) nights.push([day, (coldest = lows[day]!)]);
  return nights;
}

/** Day of a common year, 1 to 365, by month and day. */
const DAY_OF: ReadonlyMap<string, number> = new Map([
  ...Array.from({ length: COMMON_DAYS }, (_, k): [string, number] => [
    addDays(`${COMMON_YEAR}-01-01`, k).slice(5),
    k + 1,
  ]),
  ['02-29', 59],
]);

function lowsOf(history: readonly DailyWeather[], { start, days }: Half): Float64Array[] {
  const first = DAY_OF.get(start)!;
  const byYear = new Map<number, Float64Array>();
  for (const { date, minC } of history) {
    const year = Number(date.slice(0, 4));
    const at = DAY_OF.get(date.slice(5))! - first;
    const day = (at + COMMON_DAYS) % COMMON_DAYS;
    if (days <= day) continue;
    const own = at < 0 ? year - 1 : year;
    let lows = byYear.get(own);
    if (!lows) byYear.set(own, (lows = new Float64Array(days).fill(NaN)));
    lows[day] = Number.isNaN(lows[day]!) ? minC : Math.min(lows[day]!, minC);
  }
  return [...byYear.values()].filter(
    (lows) => lows.reduce((missing, c) => missing + (Number.isNaN(c) ? 1 : 0), 0) <= MOST_MISSING,
  );
}

/** Days of a half-year as they are numbered in a common year, to draw weather for it. */
export function halfYearDays(latitudeDeg: number): { spring: Int16Array; autumn: Int16Array } {
  const days = ({ start, days: count }: Half): Int16Array =>
    Int16Array.from({ length: count }, (_, k) => ((DAY_OF.get(start)! - 1 + k) % COMMON_DAYS) + 1);
  const { spring, autumn } = halvesAt(latitudeDeg);
  return { spring: days(spring), autumn: days(autumn) };
}

/**
 * Last spring and first fall frost at a threshold, over the years in which it froze: the day by
 * which it is in half of them, in as large a share as is asked for, and in the rest. A frost is a daily low at or
 * below the threshold, to a tenth of a degree. Percentiles
 * are linear between order statistics, (n − 1)q, and a half day is taken as the later one.
 */
export function frostDates(
  { springs, autumns }: RecordedFrost,
  {
    thresholdC,
    latitudeDeg,
    sureShare,
  }: { thresholdC: number; latitudeDeg: number; sureShare: number },
): FrostDates {
  const { spring, autumn } = halvesAt(latitudeDeg);
  const lasts = springs.map((nights) => frostIn(nights, thresholdC)).filter((day) => 0 <= day);
  const firsts = autumns.map((nights) => frostIn(nights, thresholdC)).filter((day) => 0 <= day);
  return {
    thresholdC,
    springs: springs.length,
    springsWithFrost: lasts.length,
    autumns: autumns.length,
    autumnsWithFrost: firsts.length,
    ...(lasts.length === 0 ? {} : { lastSpring: spreadOf(lasts, spring, sureShare) }),
    ...(firsts.length === 0 ? {} : { firstAutumn: spreadOf(firsts, autumn, sureShare) }),
  };
}

/** A reading is good to a tenth of a degree: 36 °F is 2.22 °C, and counts as 2.2. */
const HALF_A_TENTH = 0.05;

/** The day of the first night that is cold enough; -1 where none is. */
const frostIn = (nights: readonly ColdNight[], thresholdC: number): number =>
  nights.find(([, lowC]) => lowC <= thresholdC + HALF_A_TENTH)?.[0] ?? -1;

function spreadOf(days: readonly number[], { start }: Half, sureShare: number): DateSpread {
  const sorted = [...days].sort((a, b) => a - b);
  const at = (share: number): string =>
    addDays(`${COMMON_YEAR}-${start}`, Math.round(percentile(sorted, share))).slice(5);
  // Rounded, as 1 − 0.9 is a hair less than 0.1.
  return { tenth: at(round6(1 - sureShare)), half: at(0.5), ninetieth: at(sureShare) };
}
