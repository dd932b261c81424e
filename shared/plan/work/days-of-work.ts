import { addDays, dayOfYear, daysBetween, daysOfYear } from '../../calendar/plain-date.js';
import type { Climate, DailyWeather } from '../../weather/climate.js';
import type { DayRun } from '../../weather/day-run.js';
import { usualRun, WHOLE_YEAR, type DayHabit } from '../../weather/drawn-year.js';
import { soilTemperatureC, yearMeanC } from '../../weather/soil-temperature.js';
import type { RootZone } from '../../weather/soil-water.js';
import { snowCover } from '../../weather/snow-cover.js';
import { noPostOn } from '../no-post.js';
import { fitFromOdds, groundFromOdds, yearsBeside } from './odds-of-days.js';
import { dryEnough, layerDepletionMm, seenIn, workedLayer, type DryEnough } from './work-ground.js';
import type { WorkRequest } from './work-request.js';

/** Weather of every day of a plan, from its first day on. */
export interface DaysOfWork {
  readonly minC: Float64Array;
  readonly maxC: Float64Array;
  readonly rainMm: Float64Array;
  /** Ground dry enough to work on that day. */
  readonly isWorkable: Uint8Array;
  /** Ground frozen, or under snow: neither lets anybody dig, however dry it is. */
  readonly isWintry: Uint8Array;
  /** Water of the snow that lies, mm. */
  readonly snowMm: Float64Array;
  /** Water missing from the worked layer on its morning, mm. */
  readonly missingMm: Float64Array;
  /** Temperature of the top soil, °C. */
  readonly soilC: Float64Array;
  /** Days that are forecast. */
  readonly isForecast: Uint8Array;
  /** On which somebody looked at the ground and said how it is. */
  readonly isLookedAt: Uint8Array;
  /** Sundays, public holidays and days of the farm’s own list: nobody answers in a shop or an office. */
  readonly isShut: Uint8Array;
  /** Beyond the forecast they are no more than usual: which of them are wet is not known. */
  readonly isUsual?: true;
  /** What their odds are worked out from. */
  readonly beside?: {
    /** The same days in years that stand side by side for what is usual. */
    readonly years: readonly DaysOfWork[];
    /** Share of the years dry on a day in which its ground can be worked; NaN where it is known. */
    readonly fitShare: Float64Array;
    /** Odds above which a day is taken to suit: its ground, its warmth. */
    readonly groundFrom: Float64Array;
    readonly fitFrom: Float64Array;
    /** Share of years that is nearly always. */
    readonly sureShare: number;
  };
}

export type WorkPlace = Pick<
  WorkRequest,
  'climate' | 'farm' | 'tables' | 'today' | 'groundChecks' | 'publicHolidays'
>;

/** Soil water is followed from so many days before the plan; snow from the summer before. */
export const BEFORE_DAYS = 45;

/** What is the same of a plan's days in every weather. */
export interface WorkFrame {
  readonly place: WorkPlace;
  /** Day on which the run begins that a plan's days are the end of. */
  readonly first: string;
  readonly dayOfYear: Int16Array;
  /** Days that were measured or are forecast, by their place in the run. */
  readonly known: ReadonlyMap<number, DailyWeather>;
  /** Water of the snow that lies before the run, after each of the winters that stand side by side, mm. */
  readonly snowBeforeMm: readonly number[];
  readonly isShut: Uint8Array;
  readonly zone: RootZone;
  readonly dryEnough: DryEnough;
}

/** Prepares the days of a plan, those before it included that decide on its ground. */
export function workFrame(place: WorkPlace, days: number): WorkFrame {
  const { tables, farm } = place;
  const zone = workedLayer({ farm, tables });
  const usualMm = tables.work.workableGround.drierThanFieldCapacityMm;
  const frame = { ...frameFrom(place, BEFORE_DAYS, days), zone };
  return {
    ...frame,
    isShut: Uint8Array.from({ length: days }, (_, day) =>
      noPostOn(addDays(place.today, day), place) === undefined ? 0 : 1,
    ),
    dryEnough: dryEnough(tables, looksWithWater(place, zone, usualMm)),
  };
}

function frameFrom(place: WorkPlace, before: number, days: number) {
  const first = addDays(place.today, -before);
  const snowBeforeMm = snowBefore(place, first);
  return { place, first, snowBeforeMm, ...runOfDays(place.climate, first, before + days) };
}

/** Some days, and what is known of their weather. */
function runOfDays({ recent, forecast }: Climate, first: string, days: number) {
  const known = new Map<number, DailyWeather>();
  for (const day of [...(recent ?? []), ...(forecast ?? [])]) {
    const i = daysBetween(first, day.date);
    if (0 <= i && i < days) known.set(i, day);
  }
  return { dayOfYear: daysOfYear(first, days), known };
}

function daysSinceSummer({ meanMaxC }: Climate, first: string): number {
  const warmest = meanMaxC.indexOf(Math.max(...meanMaxC)) + 1;
  return (dayOfYear(first) - warmest + WHOLE_YEAR.length) % WHOLE_YEAR.length;
}

/** Snow on the eve of a day, mm of water, followed from the last summer's warmest, on which none lies. */
function snowBefore({ climate, tables }: WorkPlace, eveOf: string): number[] {
  const days = daysSinceSummer(climate, eveOf);
  const winter = runOfDays(climate, addDays(eveOf, -days), days);
  return yearsBeside(climate, winter.dayOfYear, habitOf(tables)).map(
    (run) => snowCover(withKnown(winter, run), tables.work.snow).snowMm.at(-1) ?? 0,
  );
}

const habitOf = ({ work }: WorkPlace['tables']): DayHabit => ({
  ...work.wetDay,
  dayToDay: work.dayToDay.value,
});

/** What was seen on days of which the rain is known, and what the layer lacked by the balance. */
function looksWithWater(place: WorkPlace, zone: RootZone, usualMm: number) {
  const { today, climate, farm, tables } = place;
  const looks = place.groundChecks.filter(
    ({ date }) =>
      date <= today && daysBetween(date, today) < tables.judgements.work.looksCountDays.value,
  );
  if (looks.length === 0) return [];
  const oldest = looks.reduce((a, { date }) => (date < a ? date : a), today);
  const frame = frameFrom(place, daysBetween(oldest, today) + BEFORE_DAYS, 1);
  const run = withKnown(frame, usualRun(climate, frame.dayOfYear, tables.work.wetDay));
  const { toSoilMm: rainMm } = snowCover(run, tables.work.snow, {
    liesMm: lowerMedian(frame.snowBeforeMm),
  });
  const depletionMm = layerDepletionMm(
    zone,
    { run: { ...run, rainMm }, dayOfYear: frame.dayOfYear, latitudeDeg: farm.latitudeDeg },
    { seen: [], fitFromMm: usualMm },
  );
  return seenIn(looks, frame.first, frame.dayOfYear.length)
    .filter(({ day }) => hasRain(frame.known.get(day - 1)))
    .map(({ day, isWorkable }) => ({ isWorkable, depletionMm: depletionMm[day - 1]! }));
}

const hasRain = (day: DailyWeather | undefined): boolean =>
  day?.rainMm !== null && day?.rainMm !== undefined;

/** Weather of a plan by the forecast, and beyond it by the averages of each day. */
export const averageDays = (frame: WorkFrame): DaysOfWork => ({
  ...daysOfWork(
    frame,
    usualRun(frame.place.climate, frame.dayOfYear, frame.place.tables.work.wetDay),
    lowerMedian(frame.snowBeforeMm),
  ),
  isUsual: true,
});

/**
 * Weather of a plan by the forecast, and beyond it as it usually comes. Showers as far apart as
 * usual never let ground dry that is dry on many days of most years, so beyond the forecast as many
 * of the dry days are fit to work as are on average over years.
 */
export function usualDays(frame: WorkFrame, days = averageDays(frame)): DaysOfWork {
  const { climate, tables } = frame.place;
  const { wetDay } = tables.work;
  const years = yearsBeside(climate, frame.dayOfYear, habitOf(tables)).map((run, year) =>
    daysOfWork(frame, run, frame.snowBeforeMm[year]!),
  );
  const dayOfYear = frame.dayOfYear.subarray(BEFORE_DAYS);
  const usualMm = usualRun(climate, WHOLE_YEAR, wetDay).rainMm;
  const groundFrom = groundFromOdds(usualMm, wetDay.rainMm);
  const fitShare = Float64Array.from(dayOfYear, (_, day) =>
    days.isForecast[day] === 1 || days.isLookedAt[day] === 1
      ? NaN
      : shareOfDry(years, day, wetDay.rainMm),
  );
  const sureShare = tables.judgements.work.sureShare.value;
  const isTimeFor = fortnightsFor(
    years.map(({ isWorkable }) => isWorkable),
    sureShare,
  );
  const from = Float64Array.from(dayOfYear, (of, day) =>
    isTimeFor[day] === 1 ? groundFrom[of - 1]! : Infinity,
  );
  const wintry = yearsOn(years, ({ isWintry: is }) => is);
  const isMostly = (day: number): boolean => years.length < 2 * wintry[day]!;
  const isKnownFit = (day: number): boolean =>
    days.isLookedAt[day] === 1
      ? days.isWorkable[day] === 1
      : !isMostly(day) &&
        frame.dryEnough.fromMm <= days.missingMm[day]! &&
        days.rainMm[day]! < wetDay.rainMm;
  const isWorkable = days.isWorkable.map((_, day) => {
    const share = fitShare[day]!;
    return (Number.isNaN(share) ? isKnownFit(day) : from[day]! < share) ? 1 : 0;
  });
  const isWintry = days.isWintry.map((_, day) => (isWorkable[day] === 0 && isMostly(day) ? 1 : 0));
  // Averages never thaw in winter: more snow would lie by them than does in most years.
  const snowMm = days.snowMm.map((_, day) =>
    isMostly(day) ? lowerMedian(years.map((of) => of.snowMm[day]!)) : 0,
  );
  const ofYear = fitFromOdds();
  const fitFrom = Float64Array.from(dayOfYear, (day) => ofYear[day - 1]!);
  const beside = { years, fitShare, groundFrom: from, fitFrom, sureShare };
  return { ...days, isWorkable, isWintry, snowMm, beside };
}

/** What more than half of some values reach. */
const lowerMedian = (of: readonly number[]): number =>
  of.toSorted((a, b) => a - b)[Math.floor((of.length - 1) / 2)]!;

/** Of how many years something holds on each day. */
function yearsOn(
  years: readonly DaysOfWork[],
  flags: (year: DaysOfWork) => Uint8Array,
): Uint8Array {
  const sum = new Uint8Array(years[0]!.isWorkable.length);
  for (const year of years) flags(year).forEach((is, day) => (sum[day]! += is));
  return sum;
}

/** Of the years dry on a day, the share in which its ground is fit. */
function shareOfDry(years: readonly DaysOfWork[], day: number, wetFromMm: number): number {
  let [dry, fit] = [0, 0];
  for (const { rainMm, isWorkable } of years) {
    if (wetFromMm <= rainMm[day]!) continue;
    dry++;
    fit += isWorkable[day]!;
  }
  return dry === 0 ? 0 : fit / dry;
}

/**
 * Weather of a plan's days: what was measured or forecast, and for the rest that of a run.
 *
 * @param liesMm water of the snow that lies before its first day
 */
export function daysOfWork(frame: WorkFrame, weather: DayRun, liesMm: number): DaysOfWork {
  const { place, first, dayOfYear, known, zone } = frame;
  const { fromMm } = frame.dryEnough;
  const { wetDay, snow } = place.tables.work;
  const { latitudeDeg } = place.farm;
  const run = withKnown(frame, weather);
  const n = dayOfYear.length;
  const seen = seenIn(place.groundChecks, first, n);
  const fitOn = new Set(seen.filter(({ isWorkable }) => isWorkable).map(({ day }) => day));
  const { snowMm, toSoilMm } = snowCover(run, snow, {
    isSeenClear: (day) => fitOn.has(day),
    liesMm,
  });
  const depletionMm = layerDepletionMm(
    zone,
    { run: { ...run, rainMm: toSoilMm }, dayOfYear, latitudeDeg },
    { seen, fitFromMm: fromMm },
  );
  const yearC = yearMeanC(place.climate);
  const soilC = soilTemperatureC({ ...run, dayOfYear, latitudeDeg, yearMeanC: yearC });
  const isWorkable = new Uint8Array(n);
  const isWintry = new Uint8Array(n);
  const isForecast = new Uint8Array(n);
  for (let i = BEFORE_DAYS; i < n; i++) {
    const isDry = fromMm <= depletionMm[i - 1]! && run.rainMm[i]! < wetDay.rainMm;
    // Nothing thaws on a day that is no warmer.
    const isFrozen = run.maxC[i]! <= 0 || (soilC[i]! <= 0 && !fitOn.has(i));
    isWintry[i] = isFrozen || 0 < snowMm[i]! ? 1 : 0;
    isWorkable[i] = isDry && isWintry[i] === 0 ? 1 : 0;
    isForecast[i] = known.has(i) ? 1 : 0;
  }
  const isLookedAt = new Uint8Array(n);
  for (const { day, isWorkable: isFit } of seen) {
    isWorkable[day] = isFit ? 1 : 0;
    isLookedAt[day] = 1;
  }
  return {
    minC: run.minC.subarray(BEFORE_DAYS),
    maxC: run.maxC.subarray(BEFORE_DAYS),
    rainMm: run.rainMm.subarray(BEFORE_DAYS),
    isWorkable: isWorkable.subarray(BEFORE_DAYS),
    missingMm: depletionMm.subarray(BEFORE_DAYS - 1, n - 1),
    soilC: soilC.subarray(BEFORE_DAYS),
    isWintry: isWintry.subarray(BEFORE_DAYS),
    snowMm: snowMm.subarray(BEFORE_DAYS),
    isForecast: isForecast.subarray(BEFORE_DAYS),
    isLookedAt: isLookedAt.subarray(BEFORE_DAYS),
    isShut: frame.isShut,
  };
}

function withKnown({ known }: Pick<WorkFrame, 'known'>, run: DayRun): DayRun {
  const minC = run.minC.slice();
  const maxC = run.maxC.slice();
  const rainMm = run.rainMm.slice();
  for (const [i, day] of known) {
    minC[i] = day.minC;
    maxC[i] = day.maxC;
    rainMm[i] = day.rainMm ?? rainMm[i]!;
  }
  return { minC, maxC, rainMm };
}

/** Days before and after one in the fortnight around it. */
const WEEK_DAYS = 7;

/**
 * Days around which a fortnight holds a fit day in nearly all years: before that nobody counts on one.
 * Of the first week’s days it is the fortnight to come: what lay before the plan is not in it, and half
 * a fortnight would have the fit days go before whoever waits for them.
 */
function fortnightsFor(years: readonly Uint8Array[], sureShare: number): Uint8Array {
  const { length } = years[0]!;
  const hits = new Uint8Array(length);
  for (const isFit of years) {
    let inIt = 0;
    for (let ahead = 0; ahead < length + WEEK_DAYS; ahead++) {
      const day = ahead - WEEK_DAYS;
      const behind = day - WEEK_DAYS - 1;
      inIt += (isFit[ahead] ?? 0) - (isFit[behind] ?? 0);
      if (0 <= day && 0 < inIt) hits[day]!++;
    }
  }
  const most = Math.min(WEEK_DAYS, length - 1);
  return hits.map((_, day) => (sureShare * years.length <= hits[Math.max(day, most)]! ? 1 : 0));
}
