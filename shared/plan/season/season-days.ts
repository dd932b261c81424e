import { addDays, dayOfYear, daysBetween } from '../../calendar/plain-date.js';
import type { WorkConditions } from '../../farm/job.js';
import type { Random } from '../../schedule/random.js';
import { rowById } from '../../tables/tables.js';
import { referenceEvapotranspirationMm } from '../../weather/evapotranspiration.js';
import { randomRain, typicalRain } from '../../weather/rain-days.js';
import { soilWater } from '../../weather/soil-water.js';
import type { SeasonRequest } from './season-request.js';

/** Weather of every day of a plan, from its first day on. */
export interface SeasonDays {
  readonly minC: Float64Array;
  readonly maxC: Float64Array;
  readonly rainMm: Float64Array;
  /** Ground dry enough to work on that day. */
  readonly isWorkable: Uint8Array;
  /** Days that are forecast. */
  readonly isForecast: Uint8Array;
}

type Given = Pick<SeasonRequest, 'climate' | 'farm' | 'tables' | 'today'>;

/** Soil water is followed from so many days before the plan. */
const BEFORE_DAYS = 45;
const GARDEN_SOIL = 'loam';
/** Likeness of one day's temperature to the last's. Richardson (1981), from memory. */
const DAY_TO_DAY = 0.65;
/** Standard deviations between the mean and the tenth percentile of a normal distribution. */
const TO_TENTH = 1.2816;

/**
 * Weather to plan by: measured days, then the forecast, then as many wet days as usual.
 *
 * @param random when given, the days beyond the forecast are those of one year drawn by chance
 */
export function seasonDays(given: Given, days: number, random?: Random): SeasonDays {
  const { climate, tables, today } = given;
  const first = addDays(today, -BEFORE_DAYS);
  const n = BEFORE_DAYS + days;
  const dates = Array.from({ length: n }, (_, i) => addDays(first, i));
  const slot = Int16Array.from(dates, dayOfYear);
  const pick = (year: readonly number[]): Float64Array =>
    Float64Array.from(slot, (day) => year[day - 1]!);
  const minC = pick(climate.meanMinC);
  const maxC = pick(climate.meanMaxC);
  const mean = climate.meanRainMm ? pick(climate.meanRainMm) : new Float64Array(n);
  const { wetDay } = tables.work;
  const rainMm = random ? randomRain(mean, wetDay, random) : typicalRain(mean, wetDay);
  if (random) addChance(climate.coldMinC, slot, minC, maxC, random);
  const isForecast = new Uint8Array(days);
  for (const day of [...(climate.recent ?? []), ...(climate.forecast ?? [])]) {
    const i = daysBetween(first, day.date);
    if (i < 0 || n <= i) continue;
    if (BEFORE_DAYS <= i) isForecast[i - BEFORE_DAYS] = 1;
    minC[i] = day.minC;
    maxC[i] = day.maxC;
    if (day.rainMm !== null && day.rainMm !== undefined) rainMm[i] = day.rainMm;
  }
  const depletionMm = topsoilDepletion(given, { slot, minC, maxC, rainMm });
  const { drierThanFieldCapacityMm } = tables.work.workableGround;
  const isWorkable = Uint8Array.from({ length: days }, (_, d) => {
    const i = BEFORE_DAYS + d;
    const isDry = drierThanFieldCapacityMm <= depletionMm[i - 1]!;
    return isDry && rainMm[i]! < wetDay.rainMm && 0 < maxC[i]! ? 1 : 0;
  });
  const planned = (all: Float64Array): Float64Array => all.slice(BEFORE_DAYS);
  return {
    minC: planned(minC),
    maxC: planned(maxC),
    rainMm: planned(rainMm),
    isWorkable,
    isForecast,
  };
}

interface Run {
  readonly slot: Int16Array;
  readonly minC: Float64Array;
  readonly maxC: Float64Array;
  readonly rainMm: Float64Array;
}

/** Water missing from the layer that is worked, mm: FAO-56 balance with the soil of a garden. */
function topsoilDepletion(
  { farm, tables }: Given,
  { slot, minC, maxC, rainMm }: Run,
): Float64Array {
  const { layerM, kc } = tables.work.workableGround;
  const soil = rowById(tables.soils, GARDEN_SOIL);
  const zone = { ...soil, rootDepthM: layerM, depletionShare: 0.5, kc };
  const referenceMm = referenceEvapotranspirationMm(farm.latitudeDeg, {
    dayOfYear: slot,
    minC,
    maxC,
  });
  return soilWater(zone, { rainMm, referenceMm }).depletionMm;
}

function addChance(
  coldMinC: readonly number[],
  slot: Int16Array,
  minC: Float64Array,
  maxC: Float64Array,
  random: Random,
): void {
  let off = 0;
  for (let i = 0; i < slot.length; i++) {
    const deviationC = Math.max(0, minC[i]! - coldMinC[slot[i]! - 1]!) / TO_TENTH;
    off = DAY_TO_DAY * off + Math.sqrt(1 - DAY_TO_DAY ** 2) * normal(random);
    minC[i]! += off * deviationC;
    maxC[i]! += off * deviationC;
  }
}

/** Box and Muller (1958). */
const normal = (random: Random): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** Days that suit a job; undefined when it asks nothing of a day. */
export function suitsOf(
  conditions: WorkConditions,
  days: SeasonDays,
  wetFromMm: number,
): Uint8Array | undefined {
  const { people: _people, daylight: _daylight, ...asks } = conditions;
  if (Object.values(asks).every((each) => each === undefined || each === false)) return undefined;
  return Uint8Array.from(days.rainMm, (_, day) =>
    unfitDay(conditions, days, day, wetFromMm) === undefined ? 1 : 0,
  );
}

/** What makes a day unfit for a job, in words; undefined when it suits. */
export function unfitDay(
  conditions: WorkConditions,
  { minC, maxC, rainMm, isWorkable }: SeasonDays,
  day: number,
  wetFromMm: number,
): string | undefined {
  if ((conditions.noRain || conditions.dryGround) && wetFromMm <= rainMm[day]!) return 'rain';
  if (conditions.dryGround && isWorkable[day] === 0) return 'ground too wet';
  if (maxC[day]! < (conditions.dayMaxAtLeastC ?? -Infinity)) return 'too cold';
  if ((conditions.dayMaxAtMostC ?? Infinity) < maxC[day]!) return 'too hot';
  return minC[day]! < (conditions.nightMinAtLeastC ?? -Infinity) ? 'night too cold' : undefined;
}
