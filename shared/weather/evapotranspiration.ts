import { extraterrestrialRadiationMJPerM2Day } from '../calendar/day-length.js';
import type { Formula } from '../explain/formula.js';

export const evapotranspirationFormulas = {
  hargreaves: {
    id: 'reference-evapotranspiration',
    title: 'Reference evapotranspiration',
    words:
      'Water a short green sward would use in a day, from the day’s temperatures and the sun’s strength at that latitude and date. Best over five days or longer.',
    symbols: 'ET₀ = 0.0023·(T_mean + 17.8)·√(T_max − T_min)·R_a',
    sources: ['FAO56'],
    mark: 'from-memory',
  },
} satisfies Record<string, Formula>;

/** Latent heat: 1 MJ/m² a day evaporates 0.408 mm. FAO-56 eq. 20. */
const MM_PER_MJ = 0.408;

/** Saturation vapour pressure, kPa, at an air temperature in °C. FAO-56 eq. 11. */
export const saturationVapourPressureKPa = (airC: number): number =>
  0.6108 * Math.exp((17.27 * airC) / (airC + 237.3));

/** Slope of the saturation curve, kPa/°C. FAO-56 eq. 13. */
export const vapourSlopeKPaPerC = (airC: number): number =>
  (4098 * saturationVapourPressureKPa(airC)) / (airC + 237.3) ** 2;

/** Air pressure at an elevation, kPa. FAO-56 eq. 7. */
export const airPressureKPa = (elevationM: number): number =>
  101.3 * ((293 - 0.0065 * elevationM) / 293) ** 5.26;

/** Psychrometric constant, kPa/°C. FAO-56 eq. 8. */
export const psychrometricKPaPerC = (pressureKPa: number): number => 0.665e-3 * pressureKPa;

/** Actual vapour pressure from wet and dry bulb of a ventilated psychrometer, kPa. FAO-56 eq. 15. */
export const vapourPressureOfBulbsKPa = (bulbs: {
  wetC: number;
  dryC: number;
  pressureKPa: number;
}): number =>
  saturationVapourPressureKPa(bulbs.wetC) -
  0.000662 * bulbs.pressureKPa * (bulbs.dryC - bulbs.wetC);

/** Solar radiation from sunshine hours, MJ/m² a day. FAO-56 eq. 35. */
export const solarRadiationOfSunshineMJ = (
  extraterrestrialMJ: number,
  sunshineH: number,
  daylightH: number,
): number => (0.25 + (0.5 * sunshineH) / daylightH) * extraterrestrialMJ;

/** Solar radiation from the day's temperatures, MJ/m² a day; 0.16 inland, 0.19 coast. FAO-56 eq. 50. */
export const solarRadiationOfTemperaturesMJ = (
  extraterrestrialMJ: number,
  day: { minC: number; maxC: number; isCoastal?: boolean },
): number => (day.isCoastal ? 0.19 : 0.16) * Math.sqrt(day.maxC - day.minC) * extraterrestrialMJ;

/** Wind at 2 m from wind at another height, m/s. FAO-56 eq. 47. */
export const windAt2M = (windMPerS: number, heightM: number): number =>
  (windMPerS * 4.87) / Math.log(67.8 * heightM - 5.42);

/** Net radiation, MJ/m² a day, with its long-wave part. FAO-56 eq. 37 to 40. */
export function netRadiationMJ(day: {
  minC: number;
  maxC: number;
  vapourPressureKPa: number;
  solarMJ: number;
  extraterrestrialMJ: number;
  elevationM: number;
}): { netMJ: number; longWaveMJ: number; clearSkyMJ: number } {
  const clearSkyMJ = (0.75 + 2e-5 * day.elevationM) * day.extraterrestrialMJ; // eq. 37
  const fourth = (airC: number): number => (airC + 273.16) ** 4;
  const longWaveMJ =
    4.903e-9 *
    ((fourth(day.maxC) + fourth(day.minC)) / 2) *
    (0.34 - 0.14 * Math.sqrt(day.vapourPressureKPa)) *
    (1.35 * Math.min(1, day.solarMJ / clearSkyMJ) - 0.35); // eq. 39
  return { netMJ: 0.77 * day.solarMJ - longWaveMJ, longWaveMJ, clearSkyMJ }; // eq. 38, 40
}

/** Reference evapotranspiration by Penman and Monteith, mm a day. FAO-56 eq. 6. */
export function penmanMonteithMm(day: {
  meanC: number;
  netMJ: number;
  soilHeatMJ: number;
  windMPerS: number;
  saturationKPa: number;
  vapourKPa: number;
  elevationM: number;
}): number {
  const slope = vapourSlopeKPaPerC(day.meanC);
  const gamma = psychrometricKPaPerC(airPressureKPa(day.elevationM));
  const radiation = MM_PER_MJ * slope * (day.netMJ - day.soilHeatMJ);
  const air =
    gamma * (900 / (day.meanC + 273)) * day.windMPerS * (day.saturationKPa - day.vapourKPa);
  return (radiation + air) / (slope + gamma * (1 + 0.34 * day.windMPerS));
}

/** Reference evapotranspiration from temperatures alone, mm a day, never below 0. FAO-56 eq. 52. */
export const hargreavesMm = (day: {
  minC: number;
  maxC: number;
  extraterrestrialMJ: number;
}): number =>
  Math.max(
    0,
    0.0023 *
      ((day.minC + day.maxC) / 2 + 17.8) *
      Math.sqrt(Math.max(0, day.maxC - day.minC)) *
      MM_PER_MJ *
      day.extraterrestrialMJ,
  );

/** Hargreaves for a run of days at one latitude. */
export function referenceEvapotranspirationMm(
  latitudeDeg: number,
  days: { dayOfYear: Int16Array; minC: ArrayLike<number>; maxC: ArrayLike<number> },
): Float64Array {
  return Float64Array.from(days.dayOfYear, (dayOfYear, i) =>
    hargreavesMm({
      minC: days.minC[i]!,
      maxC: days.maxC[i]!,
      extraterrestrialMJ: extraterrestrialRadiationMJPerM2Day({ latitudeDeg, dayOfYear }),
    }),
  );
}
