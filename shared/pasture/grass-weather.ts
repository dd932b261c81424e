import { extraterrestrialRadiationMJPerM2Day } from '../calendar/day-length.js';
import type { GrassDay } from './sward-day.js';
import type { GrassWeather } from './sward.js';

/** Days of a place as its weather has them. */
export interface PlainDays {
  readonly dayOfYear: Int16Array;
  readonly minC: Float64Array;
  readonly maxC: Float64Array;
  readonly rainMm: Float64Array | undefined;
  readonly referenceMm: Float64Array;
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
export function grassWeather(latitudeDeg: number, days: PlainDays): GrassWeather {
  const n = days.dayOfYear.length;
  const sumFrom = latitudeDeg < 0 ? SOUTH_FROM : 1;
  const isSnow = new Uint8Array(n);
  const isNewYear = new Uint8Array(n);
  let temperatureSum = 0;
  let snowMm = 0;
  let soilC = 0;
  const own = Array.from(days.dayOfYear, (dayOfYear, i): GrassDay => {
    const minC = days.minC[i]!;
    const maxC = days.maxC[i]!;
    const meanC = (minC + maxC) / 2;
    const rainMm = days.rainMm?.[i] ?? 0;
    soilC = i === 0 ? meanC : soilC + (meanC - soilC) / SOIL_LAG_DAYS;
    if (dayOfYear === sumFrom) {
      temperatureSum = 0;
      isNewYear[i] = 1;
    }
    temperatureSum += Math.max(0, meanC);
    snowMm = meanC < SNOW_BELOW_C ? snowMm + rainMm : Math.max(0, snowMm - MELT_MM_PER_C * meanC);
    isSnow[i] = DEEP_SNOW_MM < snowMm ? 1 : 0;
    return {
      ...{ meanC, growthC: soilC, onsetC: isSnow[i] === 1 ? -Infinity : soilC },
      ...{ temperatureSum, rainMm },
      referenceMm: days.referenceMm[i]!,
      lightMJ:
        USABLE_LIGHT *
        RADIATION_PER_ROOT_K *
        Math.sqrt(Math.max(0, maxC - minC)) *
        extraterrestrialRadiationMJPerM2Day({ latitudeDeg, dayOfYear }),
    };
  });
  return { days: own, isRainKnown: days.rainMm !== undefined, isSnow, isNewYear };
}
/** 1 July: half a year after the north, from memory. */
const SOUTH_FROM = 182;
