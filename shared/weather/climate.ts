import { addDays, dayOfYear, yearOf, type PlainDate } from '../calendar/plain-date.js';
import { yearCurve } from '../maths/year-curve.js';
import { FieldError, type FieldProblem } from '../problems/field-problem.js';
import type { RecordedFrost } from './recorded-frost.js';

export type WeatherWay = 'fetched' | 'csv' | 'monthly-means';

/** One day's weather as measured or reanalysed. */
export interface DailyWeather {
  readonly date: PlainDate;
  readonly minC: number;
  readonly maxC: number;
  readonly rainMm?: number | null;
}

/** What to expect on each day of the year at the farm. Index 0 is 1 January. */
export interface Climate {
  readonly way: WeatherWay;
  /** Where the numbers come from, as shown on the page. */
  readonly label: string;
  /** Whether the averages were estimated from coordinates and height. */
  readonly isEstimate?: boolean;
  readonly years: number;
  readonly meanMinC: readonly number[];
  readonly meanMaxC: readonly number[];
  /** A cold night: the 10th percentile of lows, or the mean less a stated margin. */
  readonly coldMinC: readonly number[];
  /** A hot day: the 90th percentile of highs, or the mean plus the same margin. */
  readonly hotMaxC: readonly number[];
  /** Standard deviation of single lows about the mean of their day; left out without a record. */
  readonly sdMinC?: readonly number[];
  /** Rain on a mean day of that date, mm; left out when no rain is known. */
  readonly meanRainMm?: readonly number[];
  /** Where frost ends and begins in each year of a daily record; left out without one. */
  readonly recordedFrost?: RecordedFrost;
  /** Measured days of the last year, oldest first: what this season has really been. */
  readonly recent?: readonly DailyWeather[];
  /** Nights and days ahead that have been forecast; these replace what is expected. */
  readonly forecast?: readonly DailyWeather[];
}

const DAYS = 366;

/**
 * Climate from twelve monthly means: a smooth yearly curve whose monthly means are the given ones.
 *
 * @param marginK how much colder than the mean a cold night, and hotter a hot day, is taken to be
 */
export function climateFromMonthlyMeans(
  monthlyMinC: readonly number[],
  monthlyMaxC: readonly number[],
  marginK: number,
  monthlyRainMm?: readonly number[],
): Climate {
  const meanMinC = yearCurve(monthlyMinC).map(tenth);
  const meanMaxC = yearCurve(monthlyMaxC).map(tenth);
  return {
    way: 'monthly-means',
    label: 'Typed monthly averages',
    years: 0,
    meanMinC,
    meanMaxC,
    coldMinC: meanMinC.map((c) => tenth(c - marginK)),
    hotMaxC: meanMaxC.map((c) => tenth(c + marginK)),
    ...(monthlyRainMm === undefined ? {} : { meanRainMm: dailyRainMm(monthlyRainMm) }),
  };
}

const MONTH_DAYS = [31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Monthly sums of rain as a smooth yearly curve of daily means. */
const dailyRainMm = (monthlyMm: readonly number[]): number[] =>
  yearCurve(
    monthlyMm.map((mm, month) => mm / MONTH_DAYS[month]!),
    0,
  ).map(hundredth);

/** Fewest days of history from which a climate is worked out: three whole years. */
export const FEWEST_CLIMATE_DAYS = 1095;

/** Days either side of a date that count as the same time of year. */
const WINDOW_DAYS = 7;

/**
 * Climate from daily history: means and percentiles over all years within a week of each date.
 *
 * @param history in date order; gaps are allowed, a gap never joins two nights
 */
export function climateFromDaily(
  history: readonly DailyWeather[],
  source: { way: 'fetched' | 'csv'; label: string },
): Climate {
  const lows = emptyYear();
  const highs = emptyYear();
  const rain = emptyYear();
  const slots = history.map(({ date }) => slotOf(date));
  history.forEach((day, i) => {
    const slot = slots[i]!;
    lows[slot]!.push(day.minC);
    highs[slot]!.push(day.maxC);
    if (day.rainMm !== null && day.rainMm !== undefined) rain[slot]!.push(day.rainMm);
  });
  const empty = uncoveredSlot(lows);
  if (empty !== undefined) throw new FieldError([uncovered(empty)]);
  const around = (year: readonly number[][], slot: number): Float64Array => {
    const values: number[] = [];
    for (let offset = -WINDOW_DAYS; offset <= WINDOW_DAYS; offset++) {
      values.push(...year[(slot + offset + DAYS) % DAYS]!);
    }
    // Sorted as numbers without a comparison of ours, which takes a fifth of the time.
    return Float64Array.from(values).sort();
  };
  const lowsAround = lows.map((_, slot) => around(lows, slot));
  const highsAround = highs.map((_, slot) => around(highs, slot));
  const meanMinC = lowsAround.map((values) => tenth(mean(values)));
  return {
    ...source,
    years: new Set(history.map((day) => yearOf(day.date))).size,
    meanMinC,
    meanMaxC: highsAround.map((values) => tenth(mean(values))),
    coldMinC: lowsAround.map((values) => tenth(percentile(values, 0.1))),
    hotMaxC: highsAround.map((values) => tenth(percentile(values, 0.9))),
    ...(uncoveredSlot(rain) === undefined
      ? { meanRainMm: rain.map((_, slot) => hundredth(mean(around(rain, slot)))) }
      : {}),
    sdMinC: departuresOf(history, slots, meanMinC),
  };
}

/** Throws when daily history leaves out a whole time of the year, as summer-only records do. */
export function checkWholeYear(history: readonly DailyWeather[]): void {
  const lows = emptyYear();
  for (const day of history) lows[slotOf(day.date)]!.push(day.minC);
  const empty = uncoveredSlot(lows);
  if (empty !== undefined) throw new FieldError([uncovered(empty)]);
}

/** First slot that has no day within the window on both sides. */
function uncoveredSlot(lows: readonly (readonly number[])[]): number | undefined {
  const slot = lows.findIndex((_, i) => {
    for (let offset = -WINDOW_DAYS; offset <= WINDOW_DAYS; offset++) {
      if (0 < lows[(i + offset + DAYS) % DAYS]!.length) return false;
    }
    return true;
  });
  return slot === -1 ? undefined : slot;
}

const uncovered = (slot: number): FieldProblem => ({
  field: 'history',
  code: 'missing',
  given: undefined,
  fix: `There is no day within a week of ${addDays('2023-01-01', slot).slice(5)} (month-day) in any year. Give whole years.`,
});

/** Expected weather of each of `days.length` days, forecast days replacing the climate. */
export function expectedWeather(
  climate: Climate,
  days: {
    readonly dayOfYear: Int16Array;
    readonly forecastByIndex?: ReadonlyMap<number, DailyWeather>;
  },
): { minC: Float64Array; maxC: Float64Array; coldMinC: Float64Array; hotMaxC: Float64Array } {
  const n = days.dayOfYear.length;
  const minC = new Float64Array(n);
  const maxC = new Float64Array(n);
  const coldMinC = new Float64Array(n);
  const hotMaxC = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const slot = days.dayOfYear[i]! - 1;
    const known = days.forecastByIndex?.get(i);
    minC[i] = known?.minC ?? climate.meanMinC[slot]!;
    maxC[i] = known?.maxC ?? climate.meanMaxC[slot]!;
    coldMinC[i] = known?.minC ?? climate.coldMinC[slot]!;
    hotMaxC[i] = known?.maxC ?? climate.hotMaxC[slot]!;
  }
  return { minC, maxC, coldMinC, hotMaxC };
}

/** Slot 0 to 365 of a date: its day of the year. A leap year shifts it by one day, within the window. */
function slotOf(date: PlainDate): number {
  return dayOfYear(date) - 1;
}

/**
 * Standard deviation of lows about the mean of their own day, over all years within a week of each
 * date: the course of the season is not counted as spread.
 */
function departuresOf(
  history: readonly DailyWeather[],
  slots: readonly number[],
  meanMinC: readonly number[],
): number[] {
  const squares = new Float64Array(DAYS);
  const counts = new Float64Array(DAYS);
  history.forEach(({ minC }, i) => {
    const slot = slots[i]!;
    squares[slot]! += (minC - meanMinC[slot]!) ** 2;
    counts[slot]! += 1;
  });
  return meanMinC.map((_, slot) => {
    let [sum, count] = [0, 0];
    for (let offset = -WINDOW_DAYS; offset <= WINDOW_DAYS; offset++) {
      const at = (slot + offset + DAYS) % DAYS;
      sum += squares[at]!;
      count += counts[at]!;
    }
    return Math.max(LEAST_SD_C, hundredth(Math.sqrt(sum / count)));
  });
}

/** A record of equal lows still does not promise the next one. */
const LEAST_SD_C = 0.5;

/** Linear between order statistics, (n − 1)q. `sorted` rises. */
export function percentile(sorted: ArrayLike<number>, share: number): number {
  const at = (sorted.length - 1) * share;
  const low = Math.floor(at);
  const high = Math.min(sorted.length - 1, low + 1);
  return sorted[low]! + (sorted[high]! - sorted[low]!) * (at - low);
}

const emptyYear = (): number[][] => Array.from({ length: DAYS }, () => []);
const mean = (values: Float64Array): number => values.reduce((a, b) => a + b, 0) / values.length;
const hundredth = (value: number): number => Math.round(value * 100) / 100;
const tenth = (value: number): number => Math.round(value * 10) / 10;
