import { dayLengthH } from '../calendar/day-length.js';
import { daysBetween, daysOfYear } from '../calendar/plain-date.js';
import type { Sourced } from '../explain/formula.js';
import type { Batch } from '../farm/batch.js';
import { countedFrom } from '../farm/egg-count.js';
import { facilityOf } from '../farm/facility.js';
import { layByAir, layByLight, lightFelt } from '../poultry/lay-conditions.js';
import { layByAge, moltDays, type DaysOfHens } from '../poultry/lay-cycles.js';
import { survivingShare } from '../poultry/losses.js';
import type { LayCurve } from '../tables/lay-tables.js';
import { LAY_YEAR_DAYS } from './laying-years.js';
import type { Life } from './life.js';
import type { PlanRequest } from './request.js';

/** What hens of a batch lay on each day, from the day of arrival to the end of the last laying year. */
export interface LayDays {
  readonly curve: LayCurve;
  /** Day of the first egg. */
  readonly firstDay: number;
  /** The day that follows the last laying year; the arrays hold it too, as plans end with it. */
  readonly endDay: number;
  /** Days on which molts begin. */
  readonly molts: readonly number[];
  readonly dayOfYear: Int16Array;
  /** Hours of sun. */
  readonly sunH: Float64Array;
  /** Hours of light that the lamp makes up: the coop's, or those a lamp would be set to. */
  readonly lampH: number;
  readonly isLit: boolean;
  readonly byAge: Float64Array;
  readonly byLight: Readonly<Record<'lit' | 'unlit', Float64Array>>;
  readonly byAir: Float64Array;
  /** Eggs per hen and day with a lamp, and without. */
  readonly share: Readonly<Record<'lit' | 'unlit', Float64Array>>;
  /** The same as planned: with a lamp where the coop has one. */
  readonly planned: Float64Array;
  readonly hens: Float64Array;
  readonly own: OwnLay;
  /** Rows that lay rests on in the first year; later years rest on `laterRows` besides. */
  readonly rows: readonly Sourced[];
  readonly laterRows: readonly Sourced[];
}

/** The household's own lay over the table's. */
export interface OwnLay {
  readonly factor: number;
  /** By a year's eggs that were typed. */
  readonly typedFactor: number;
  /** Days of counted eggs, and what was counted over what was expected on them. */
  readonly countedDays: number;
  readonly countedRatio: number;
}

type Place = Pick<PlanRequest, 'farm' | 'climate' | 'facilities' | 'eggCounts' | 'tables'>;

/** Lay of a batch over all laying years that the table knows; undefined when it is not for eggs. */
export function layDaysOf(batch: Batch, life: Life, place: Place): LayDays | undefined {
  const { layCurve: curve, firstEggAgeDays, arrivalAgeDays } = life;
  if (curve === undefined || firstEggAgeDays === undefined) return undefined;
  const { tables, farm, facilities } = place;
  const { laying, light, heat } = tables;
  const firstDay = firstEggAgeDays - arrivalAgeDays;
  const endDay = firstDay + laying.years.shares.length * LAY_YEAR_DAYS;
  const count = endDay + 1;
  const dayOfYear = daysOfYear(batch.arrivalDate, count);
  const yearH = yearOfDayLengths(farm.latitudeDeg);
  // Hens that began early are as far in their lay as older ones.
  const days: DaysOfHens = {
    firstAgeDays: arrivalAgeDays - life.firstEggMovedDays,
    dayOfYear,
  };
  const molts = moltDays(laying.molt, yearH, days).filter((day) => day < endDay);
  const lightH = facilityOf(facilities, 'coop', batch.coopId)?.lightH;
  const lampH = lightH ?? light.targetH;
  const sunH = Float64Array.from(dayOfYear, (day) => yearH[day - 1]!);
  const byAge = layByAge(curve, laying, days, molts);
  const byLight = {
    unlit: lightByDay(place, curve, { dayOfYear, yearH, firstMolt: molts[0], lampH: 0 }),
    lit: lightByDay(place, curve, { dayOfYear, yearH, firstMolt: molts[0], lampH }),
  };
  const byAir = airByDay(place, dayOfYear);
  const hens = hensAlive(life, count);
  const isLit = lightH !== undefined;
  const share = {
    unlit: product(byAge, byLight.unlit, byAir),
    lit: product(byAge, byLight.lit, byAir),
  };
  const own = ownLay(batch, place, { share: isLit ? share.lit : share.unlit, hens, firstDay });
  for (const values of [share.unlit, share.lit]) scale(values, own.factor);
  return {
    curve,
    firstDay,
    endDay,
    molts,
    dayOfYear,
    sunH,
    lampH,
    isLit,
    byAge,
    byLight,
    byAir,
    share,
    planned: isLit ? share.lit : share.unlit,
    hens,
    own,
    rows: [curve, curve.flock, curve.lightShare, light.response, laying.air, heat.building],
    laterRows: [laying.molt, laying.years],
  };
}

const knownYears = new Map<number, Float64Array>();
/** Places whose years of day lengths are kept; a service plans for many farms. */
const MOST_PLACES = 64;

/** Length of each day of the year at a latitude, h; kept, because each plan asks for the same. */
function yearOfDayLengths(latitudeDeg: number): Float64Array {
  let year = knownYears.get(latitudeDeg);
  if (!year) {
    if (MOST_PLACES <= knownYears.size) knownYears.clear();
    year = Float64Array.from({ length: 366 }, (_, k) =>
      dayLengthH({ latitudeDeg, dayOfYear: k + 1 }),
    );
    knownYears.set(latitudeDeg, year);
  }
  return year;
}

function lightByDay(
  { tables: { light } }: Place,
  curve: LayCurve,
  {
    dayOfYear,
    yearH,
    firstMolt = Infinity,
    lampH,
  }: { dayOfYear: Int16Array; yearH: Float64Array; firstMolt: number | undefined; lampH: number },
): Float64Array {
  const read = layByLight(light);
  const back = light.response.fallDays;
  // Four laying years meet the same days of the year.
  const ofYear = (isFirst: boolean): Float64Array => {
    const felt = lightFelt(curve, isFirst);
    const year = new Float64Array(366);
    for (let day = 0; day < 366; day++) {
      const hours = Math.max(lampH, yearH[day]!);
      const hoursBefore = Math.max(lampH, yearH[(day - back + 366) % 366]!);
      year[day] = read({ hours, hoursBefore }, felt, isFirst);
    }
    return year;
  };
  const [first, later] = [ofYear(true), ofYear(false)];
  const byDay = new Float64Array(dayOfYear.length);
  for (let i = 0; i < byDay.length; i++)
    byDay[i] = (i < firstMolt ? first : later)[dayOfYear[i]! - 1]!;
  return byDay;
}

/** Hens in their house feel air that is a little warmer than outside. */
function airByDay({ climate, tables }: Place, dayOfYear: Int16Array): Float64Array {
  const read = layByAir(tables.laying);
  const warmer = tables.heat.building.warmerThanOutsideK;
  const ofYear = new Float64Array(366);
  for (let day = 0; day < 366; day++)
    ofYear[day] = read((climate.meanMinC[day]! + climate.meanMaxC[day]!) / 2 + warmer);
  const byDay = new Float64Array(dayOfYear.length);
  for (let i = 0; i < byDay.length; i++) byDay[i] = ofYear[dayOfYear[i]! - 1]!;
  return byDay;
}

/** Hens alive on each day, past the end of the plan too. */
function hensAlive(life: Life, count: number): Float64Array {
  const { placed, rates, alive, days } = life;
  const last = days - 1;
  const females = alive.female[last]! / (placed * survivingShare(rates, last));
  const hens = new Float64Array(count);
  for (let i = 0; i < count; i++)
    hens[i] = i < days ? alive.female[i]! : placed * females * survivingShare(rates, i);
  return hens;
}

/** Eggs typed for a year, then eggs counted, over what the table expects of the same hens. */
function ownLay(
  batch: Batch,
  { tables, eggCounts = [] }: Place,
  { share, hens, firstDay }: { share: Float64Array; hens: Float64Array; firstDay: number },
): OwnLay {
  let year = 0;
  for (let i = firstDay; i < firstDay + LAY_YEAR_DAYS; i++) year += share[i]!;
  const typedFactor = batch.ownEggsPerHen === undefined ? 1 : batch.ownEggsPerHen / year;
  let [counted, expected, countedDays] = [0, 0, 0];
  for (const { date, days, eggs } of eggCounts) {
    const first = daysBetween(batch.arrivalDate, countedFrom({ date, days }));
    const end = Math.min(share.length, first + days);
    if (first < firstDay || end < first + days) continue;
    counted += eggs;
    countedDays += days;
    for (let i = first; i < end; i++) expected += typedFactor * share[i]! * hens[i]!;
  }
  const countedRatio = 0 < expected ? counted / expected : 1;
  const weight = countedDays / (countedDays + tables.laying.ownCounts.days);
  return {
    factor: typedFactor * (1 + weight * (countedRatio - 1)),
    typedFactor,
    countedDays,
    countedRatio,
  };
}

function product(a: Float64Array, b: Float64Array, c: Float64Array): Float64Array {
  const result = new Float64Array(a.length);
  for (let i = 0; i < a.length; i++) result[i] = a[i]! * b[i]! * c[i]!;
  return result;
}

function scale(values: Float64Array, factor: number): void {
  for (let i = 0; i < values.length; i++) values[i] = Math.min(1, values[i]! * factor);
}
