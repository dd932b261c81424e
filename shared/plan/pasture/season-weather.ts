import { daysBetween, daysOfYear, monthOf } from '../../calendar/plain-date.js';
import { addDays } from '../../calendar/plain-date.js';
import { referenceEvapotranspirationMm } from '../../weather/evapotranspiration.js';
import type { Climate } from '../../weather/climate.js';
import type { DayRun } from '../../weather/day-run.js';
import { hotDaysC } from '../../weather/hot-day.js';
import type { PastureRequest } from './pasture-request.js';
import type { PastureSpan } from './pasture-span.js';

/** One run of days of weather with the water a sward would use. */
export interface WeatherRun {
  readonly minC: Float64Array;
  readonly maxC: Float64Array;
  readonly rainMm: Float64Array | undefined;
  readonly referenceMm: Float64Array;
}

/** What the season brings, beside the usual weather of the same days. */
export interface SeasonWeather {
  readonly dayOfYear: Int16Array;
  readonly expected: WeatherRun;
  readonly usual: WeatherRun;
  /** High of a hot day of one year in ten at that time of year, °C. */
  readonly hotC: Float64Array;
  /** The plan's weather is the usual one: nothing else is known, and nothing else was asked. */
  readonly isUsual: boolean;
  /** Days of the season that are measured or forecast rather than usual. */
  readonly knownDays: number;
  /** 1 on each of those days. */
  readonly isKnown: Uint8Array;
}

/**
 * Weather of a season: what was measured, then the forecast, then the usual, whose rain the
 * household may scale by month.
 *
 * @param drawn weather in place of the usual on days that nobody knows yet
 */
export function seasonWeather(
  {
    climate,
    farm,
    choices,
    tables,
  }: Pick<PastureRequest, 'climate' | 'farm' | 'choices' | 'tables'>,
  span: PastureSpan,
  drawn?: (dayOfYear: Int16Array) => DayRun,
): SeasonWeather {
  const dayOfYear = daysOfYear(span.first, span.days);
  const pick = (year: ArrayLike<number>): Float64Array =>
    Float64Array.from(dayOfYear, (day) => year[day - 1]!);
  const minC = pick(climate.meanMinC);
  const maxC = pick(climate.meanMaxC);
  const rainMm = climate.meanRainMm && pick(climate.meanRainMm);
  const usual: WeatherRun = {
    minC,
    maxC,
    rainMm,
    referenceMm: referenceEvapotranspirationMm(farm.latitudeDeg, { dayOfYear, minC, maxC }),
  };
  const run = drawn?.(dayOfYear);
  const expected = {
    minC: Float64Array.from(run?.minC ?? minC),
    maxC: Float64Array.from(run?.maxC ?? maxC),
    rainMm: rainMm && Float64Array.from(run?.rainMm ?? rainMm),
  };
  if (expected.rainMm && choices.rainShareByMonth) {
    for (let i = 0; i < span.days; i++) {
      const month = monthOf(addDays(span.first, i));
      expected.rainMm[i]! *= choices.rainShareByMonth[month - 1]!;
    }
  }
  const isKnown = putKnown(climate, span, expected);
  const knownDays = isKnown.reduce((sum, day) => sum + day, 0);
  const referenceMm =
    knownDays === 0 && !run
      ? usual.referenceMm
      : referenceEvapotranspirationMm(farm.latitudeDeg, { dayOfYear, ...expected });
  const isUsual = knownDays === 0 && !run && choices.rainShareByMonth === undefined;
  const { hotDayDeviations, highsSpreadK } = tables.judgements.grass;
  const hotC = pick(
    hotDaysC(climate, { deviations: hotDayDeviations.value, highsSpreadK: highsSpreadK.value }),
  );
  return {
    dayOfYear,
    expected: { ...expected, referenceMm },
    usual,
    hotC,
    isUsual,
    knownDays,
    isKnown,
  };
}

function putKnown(
  climate: Climate,
  span: PastureSpan,
  into: { minC: Float64Array; maxC: Float64Array; rainMm: Float64Array | undefined },
): Uint8Array {
  const isKnown = new Uint8Array(span.days);
  for (const day of [...(climate.recent ?? []), ...(climate.forecast ?? [])]) {
    const i = daysBetween(span.first, day.date);
    if (i < 0 || span.days <= i) continue;
    isKnown[i] = 1;
    into.minC[i] = day.minC;
    into.maxC[i] = day.maxC;
    if (into.rainMm && day.rainMm !== null && day.rainMm !== undefined) into.rainMm[i] = day.rainMm;
  }
  return isKnown;
}
