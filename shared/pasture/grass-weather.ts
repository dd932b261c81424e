import { extraterrestrialRadiationMJPerM2Day } from '../calendar/day-length.js';
import type { DeadGrass } from '../tables/pasture-tables.js';
import { rainWetness } from './dead-grass.js';
import type { GrassDay } from './sward-day.js';

/** Days of a place as its weather has them. */
export interface PlainDays {
  readonly dayOfYear: Int16Array;
  readonly minC: Float64Array;
  readonly maxC: Float64Array;
  readonly rainMm: Float64Array | undefined;
  readonly referenceMm: Float64Array;
  /** Years that stand for it side by side: one where the days are as they come. */
  readonly years: readonly PlainYear[];
}

type PlainYear = Pick<PlainDays, 'minC' | 'maxC'> & { readonly rainMm: Float64Array };

/** Weather of a run of days as swards meet it; day 0 is the first. */
export interface GrassWeather {
  readonly days: readonly GrassDay[];
  readonly years: readonly GrassYear[];
  /** Where no rain is known the soil is never dry, whatever is drawn from it. */
  readonly isRainKnown: boolean;
  /** Rain of the last weeks over what the air would have taken up, by day. */
  readonly rainWetness: Float64Array;
  readonly deadGrass: DeadGrass;
  /** 1 while snow lies. */
  readonly isSnow: Uint8Array;
  /** 1 on days on which the year of grass begins anew. */
  readonly isNewYear: Uint8Array;
}

/** What growth goes by in one of the years that a weather stands for, as `GrassDay` has it. */
export interface GrassYear {
  readonly lightMJ: Float64Array;
  readonly growthC: Float64Array;
  readonly onsetC: Float64Array;
  readonly temperatureSum: Float64Array;
  readonly rainMm: Float64Array;
}

/** Of the sun's radiation, what plants use. A middle of factors in use, 0.47 to 0.50; from memory. */
const USABLE_LIGHT = 0.48;
/** Between inland 0.16 and coast 0.19. FAO-56 eq. 50. */
const RADIATION_PER_ROOT_K = 0.17;
/** Days over which the soil follows the air: ten, as in Schapendonk et al. 1998. */
const SOIL_LAG_DAYS = 10;
/** Snow falls below this mean, °C, and melts by so many mm a day and degree; from memory. */
const SNOW_BELOW_C = 1;
const MELT_MM_PER_C = 3;
/** Water in the snow from which cattle do not reach the grass, mm; a planning guess. */
const DEEP_SNOW_MM = 10;

/**
 * Days of weather as swards meet them: light from the spread of temperatures (FAO-56 eq. 50), soil
 * that follows the air, the temperature sum of the year, snow that lies.
 *
 * The temperature sum begins anew on 1 January, in the south on 1 July.
 */
export function grassWeather(
  latitudeDeg: number,
  days: PlainDays,
  deadGrass: DeadGrass,
): GrassWeather {
  const { dayOfYear, minC, maxC, rainMm, referenceMm } = days;
  const n = dayOfYear.length;
  const sunMJ = Float64Array.from(dayOfYear, (day) =>
    extraterrestrialRadiationMJPerM2Day({ latitudeDeg, dayOfYear: day }),
  );
  const sumFrom = latitudeDeg < 0 ? SOUTH_FROM : 1;
  const isNewYear = Uint8Array.from(dayOfYear, (day) => Number(day === sumFrom));
  const isSnow = new Uint8Array(n);
  const noRain = new Float64Array(n);
  const mean = yearOf({ minC, maxC, rainMm: rainMm ?? noRain }, sunMJ, isNewYear, isSnow);
  return {
    isNewYear,
    isSnow,
    isRainKnown: rainMm !== undefined,
    rainWetness: rainWetness(deadGrass, rainMm ?? noRain, referenceMm),
    deadGrass,
    years: days.years.map((year) => yearOf(year, sunMJ, isNewYear)),
    days: Array.from(dayOfYear, (_, i) => ({
      meanC: (minC[i]! + maxC[i]!) / 2,
      growthC: mean.growthC[i]!,
      onsetC: mean.onsetC[i]!,
      temperatureSum: mean.temperatureSum[i]!,
      lightMJ: mean.lightMJ[i]!,
      rainMm: mean.rainMm[i]!,
      referenceMm: referenceMm[i]!,
    })),
  };
}
/** 1 July: half a year after the north, from memory. */
const SOUTH_FROM = 182;

/** @param isSnow where days on which snow lies are marked */
function yearOf(
  { minC, maxC, rainMm }: PlainYear,
  sunMJ: Float64Array,
  isNewYear: Uint8Array,
  isSnow?: Uint8Array,
): GrassYear {
  const n = sunMJ.length;
  const lightMJ = new Float64Array(n);
  const growthC = new Float64Array(n);
  const onsetC = new Float64Array(n);
  const sums = new Float64Array(n);
  let [temperatureSum, snowMm, soilC] = [0, 0, (minC[0]! + maxC[0]!) / 2];
  for (let i = 0; i < n; i++) {
    const meanC = (minC[i]! + maxC[i]!) / 2;
    soilC += (meanC - soilC) / SOIL_LAG_DAYS;
    if (isNewYear[i] === 1) temperatureSum = 0;
    temperatureSum += Math.max(0, meanC);
    if (meanC < SNOW_BELOW_C) snowMm += rainMm[i]!;
    else snowMm = Math.max(0, snowMm - MELT_MM_PER_C * meanC);
    const lies = DEEP_SNOW_MM < snowMm;
    if (lies && isSnow) isSnow[i] = 1;
    growthC[i] = soilC;
    onsetC[i] = lies ? -Infinity : soilC;
    sums[i] = temperatureSum;
    lightMJ[i] =
      USABLE_LIGHT * RADIATION_PER_ROOT_K * Math.sqrt(Math.max(0, maxC[i]! - minC[i]!)) * sunMJ[i]!;
  }
  return { lightMJ, growthC, onsetC, temperatureSum: sums, rainMm };
}
