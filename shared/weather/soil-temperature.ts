import { extraterrestrialRadiationMJPerM2Day } from '../calendar/day-length.js';
import type { Formula } from '../explain/formula.js';
import type { Climate } from './climate.js';

export const soilTemperatureFormulas = {
  soil: {
    id: 'soil-temperature',
    title: 'Warmth of the soil',
    words:
      'Bare soil in the sun is somewhat warmer than the air by day, and in the dark of winter colder. What lies 4 in below follows a fifth of the way each day, held a little by the mean of the year. Straw, shade and wet clay keep it colder: a thermometer at 4 in, read in the morning, knows better.',
    symbols:
      'T = 0.8·T₋₁ + 0.2·(T_s + d·(T_year − T_s)); T_s = T_air + ((0.85·H − 14) ÷ 20)·(T_max − T_min) ÷ 2',
    sources: ['SWAT_SOIL'],
    mark: 'from-memory',
  },
} satisfies Record<string, Formula>;

/** Share of a day's temperature that is still there on the next: lag of the model. */
const KEPT_SHARE = 0.8;
/** Light that dark bare soil throws back. */
const ALBEDO = 0.15;
/** Between inland 0.16 and coast 0.19. FAO-56 eq. 50. */
const RADIATION_PER_ROOT_K = 0.17;
/** Depth over damping depth: 100 mm of a loam of 1.4 t/m³ that is half full of water, 2,540 mm. */
const DEPTH_RATIO = 0.039;
/** Weight of the mean of the year at that depth. */
const DEPTH_SHARE = DEPTH_RATIO / (DEPTH_RATIO + Math.exp(-0.867 - 2.078 * DEPTH_RATIO));

/** Weather of some days, and where they are. */
export interface SoilDays {
  readonly minC: ArrayLike<number>;
  readonly maxC: ArrayLike<number>;
  /** Day of the year of each, 1 to 366. */
  readonly dayOfYear: ArrayLike<number>;
  readonly latitudeDeg: number;
  readonly yearMeanC: number;
}

/**
 * Mean temperature of each day 10 cm (4 in) deep in a bare bed, °C. Right from about a month after
 * the first day on.
 *
 * Left out: snow, straw and plants, which keep the soil warmer in winter and colder in spring.
 * Source: soil temperature of the SWAT model (Williams and others, from EPIC), after the theory
 * manual, from memory; radiation by FAO-56 equation 50.
 */
export function soilTemperatureC(days: SoilDays): Float64Array {
  const { minC, maxC, dayOfYear, latitudeDeg, yearMeanC } = days;
  const soil = new Float64Array(minC.length);
  for (let day = 0; day < soil.length; day++) {
    const range = Math.max(0, maxC[day]! - minC[day]!);
    const lightMJ =
      RADIATION_PER_ROOT_K *
      Math.sqrt(range) *
      extraterrestrialRadiationMJPerM2Day({ latitudeDeg, dayOfYear: dayOfYear[day]! });
    const meanC = (minC[day]! + maxC[day]!) / 2;
    const surfaceC = meanC + ((((1 - ALBEDO) * lightMJ - 14) / 20) * range) / 2;
    const deepC = surfaceC + DEPTH_SHARE * (yearMeanC - surfaceC);
    soil[day] = day === 0 ? deepC : KEPT_SHARE * soil[day - 1]! + (1 - KEPT_SHARE) * deepC;
  }
  return soil;
}

/** Mean of a year by its averages, °C. */
export const yearMeanC = ({ meanMinC, meanMaxC }: Pick<Climate, 'meanMinC' | 'meanMaxC'>): number =>
  meanMinC.reduce((sum, c, day) => sum + (c + meanMaxC[day]!) / 2, 0) / meanMinC.length;

/** Temperature of the soil of a bare bed by the averages, for every day of the year, °C. */
export function usualSoilC(
  climate: Pick<Climate, 'meanMinC' | 'meanMaxC'>,
  latitudeDeg: number,
): readonly number[] {
  const { meanMinC, meanMaxC } = climate;
  // The year before settles what it began with.
  const twice = (year: readonly number[]): number[] => [...year, ...year];
  const soil = soilTemperatureC({
    minC: twice(meanMinC),
    maxC: twice(meanMaxC),
    dayOfYear: twice(meanMinC.map((_, day) => day + 1)),
    latitudeDeg,
    yearMeanC: yearMeanC(climate),
  });
  return [...soil.subarray(meanMinC.length)];
}
