import { daysBetween, daysOfYear, monthOf } from '../../calendar/plain-date.js';
import { addDays } from '../../calendar/plain-date.js';
import { referenceEvapotranspirationMm } from '../../weather/evapotranspiration.js';
import type { Climate } from '../../weather/climate.js';
import type { DayRun } from '../../weather/day-run.js';
import { usualYears } from '../../weather/usual-years.js';
import { seededRandom } from '../../schedule/random.js';
import { hotDaysC } from '../../weather/hot-day.js';
import type { PastureRequest } from './pasture-request.js';
import type { PastureSpan } from './pasture-span.js';

/** One run of days of weather with the water a sward would use. */
export interface WeatherRun {
  readonly minC: Float64Array;
  readonly maxC: Float64Array;
  readonly rainMm: Float64Array | undefined;
  readonly referenceMm: Float64Array;
  /** Years that stand for it side by side; one where the days are as they come. */
  readonly years: readonly DayRun[];
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
  const usual = usualOf(climate, farm.latitudeDeg, dayOfYear, tables);
  const { minC, maxC, rainMm } = usual;
  const run = drawn?.(dayOfYear);
  const { rainShareByMonth } = choices;
  const share = rainShareByMonth && rainShares(span, rainShareByMonth);
  const isAsUsual = !run && !share;
  const expected = changed({ minC, maxC, rainMm, ...run }, share);
  const isKnown = putKnown(climate, span, expected);
  const knownDays = isKnown.reduce((sum, day) => sum + day, 0);
  const isUsual = knownDays === 0 && isAsUsual;
  const years = (run ? [run] : usual.years).map((year) => {
    if (isUsual) return year;
    const own = changed(year, share);
    putKnown(climate, span, own);
    return own;
  });
  const referenceMm =
    knownDays === 0 && !run
      ? usual.referenceMm
      : referenceEvapotranspirationMm(farm.latitudeDeg, { dayOfYear, ...expected });
  const { hotDayDeviations, highsSpreadK } = tables.judgements.grass;
  const hotC = pick(
    hotDaysC(climate, { deviations: hotDayDeviations.value, highsSpreadK: highsSpreadK.value }),
  );
  return {
    dayOfYear,
    expected: isUsual
      ? usual
      : { ...expected, rainMm: rainMm && expected.rainMm, referenceMm, years },
    usual,
    hotC,
    isUsual,
    knownDays,
    isKnown,
  };
}

const YEARS = 12;
const SEED = 1981;

const knownUsual = new WeakMap<Climate, Map<string, WeatherRun>>();

/**
 * The usual weather of days; kept, as one climate is asked for in many what-ifs. Its years are the
 * same on every day: a plan made tomorrow finds the weather of the one made today.
 */
function usualOf(
  climate: Climate,
  latitudeDeg: number,
  dayOfYear: Int16Array,
  { work }: PastureRequest['tables'],
): WeatherRun {
  const key = [latitudeDeg, dayOfYear[0], dayOfYear.length].join();
  let ofClimate = knownUsual.get(climate);
  if (!ofClimate) knownUsual.set(climate, (ofClimate = new Map()));
  const before = ofClimate.get(key);
  if (before) return before;
  const pick = (year: ArrayLike<number>): Float64Array =>
    Float64Array.from(dayOfYear, (day) => year[day - 1]!);
  const minC = pick(climate.meanMinC);
  const maxC = pick(climate.meanMaxC);
  const habit = { ...work.wetDay, dayToDay: work.dayToDay.value };
  const usual = {
    ...{ minC, maxC },
    rainMm: climate.meanRainMm && pick(climate.meanRainMm),
    referenceMm: referenceEvapotranspirationMm(latitudeDeg, { dayOfYear, minC, maxC }),
    years: usualYears(climate, dayOfYear, habit, seededRandom(SEED), YEARS),
  };
  ofClimate.set(key, usual);
  return usual;
}

/** Share of the rain that falls on each day, as it was asked for by month. */
const rainShares = (span: PastureSpan, byMonth: readonly number[]): Float64Array =>
  Float64Array.from({ length: span.days }, (_, i) => byMonth[monthOf(addDays(span.first, i)) - 1]!);

/** A copy with its rain scaled by day. */
function changed<R extends Float64Array | undefined>(
  { minC, maxC, rainMm }: { minC: Float64Array; maxC: Float64Array; rainMm: R },
  share: Float64Array | undefined,
): { minC: Float64Array; maxC: Float64Array; rainMm: R } {
  return {
    minC: minC.slice(),
    maxC: maxC.slice(),
    rainMm: rainMm?.map((mm, day) => mm * (share?.[day] ?? 1)) as R,
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
