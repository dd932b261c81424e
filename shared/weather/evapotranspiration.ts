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
