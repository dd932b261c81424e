import type { Formula } from '../explain/formula.js';

export const soilWaterFormulas = {
  depletion: {
    id: 'soil-water-depletion',
    title: 'Water missing from the root zone',
    words:
      'Yesterday’s shortfall, less the rain, plus what the sward used; what is more than the soil holds drains away. Below a threshold the sward uses and grows less.',
    symbols: 'D = D₋₁ − P + K_s·K_c·ET₀ + DP, 0 ≤ D ≤ TAW',
    sources: ['FAO56'],
    mark: 'from-memory',
  },
  stress: {
    id: 'water-stress',
    title: 'Growth left by dry soil',
    words:
      'All of it until a share of the water in reach is used up, then falling evenly to none when all is used.',
    symbols: 'K_s = (TAW − D) ÷ ((1 − p)·TAW) for D > p·TAW',
    sources: ['FAO56'],
    mark: 'from-memory',
  },
} satisfies Record<string, Formula>;

/** Root zone of a sward: what it can hold and when it runs short. */
export interface RootZone {
  readonly fieldCapacity: number;
  readonly wiltingPoint: number;
  readonly rootDepthM: number;
  /** Share of the water in reach that is used without stress, at 5 mm a day. */
  readonly depletionShare: number;
  /** Crop coefficient. */
  readonly kc: number;
}

/** Total available water, mm. FAO-56 eq. 82. */
export const totalAvailableWaterMm = (zone: RootZone): number =>
  1000 * (zone.fieldCapacity - zone.wiltingPoint) * zone.rootDepthM;

/** Share readily available at a crop evapotranspiration, 0.1 to 0.8. FAO-56 table 22, note. */
export const adjustedDepletionShare = (share: number, cropMm: number): number =>
  Math.min(0.8, Math.max(0.1, share + 0.04 * (5 - cropMm)));

/** Water stress coefficient, 0 to 1. FAO-56 eq. 84. */
export function stressCoefficient(depletionMm: number, totalMm: number, share: number): number {
  const readilyMm = share * totalMm; // eq. 83
  if (depletionMm <= readilyMm) return 1;
  return Math.max(0, (totalMm - depletionMm) / ((1 - share) * totalMm));
}

/**
 * Daily soil-water balance of a root zone. FAO-56 eq. 85 without run-off, irrigation and capillary
 * rise.
 *
 * @param startDepletionMm 0 is field capacity, as after winter
 * @returns depletion at the end of each day, mm, and the stress coefficient in it
 */
export function soilWater(
  zone: RootZone,
  days: { rainMm: ArrayLike<number>; referenceMm: ArrayLike<number> },
  startDepletionMm = 0,
): { depletionMm: Float64Array; stress: Float64Array } {
  const n = days.rainMm.length;
  const totalMm = totalAvailableWaterMm(zone);
  const depletionMm = new Float64Array(n);
  const stress = new Float64Array(n);
  let depleted = startDepletionMm;
  for (let i = 0; i < n; i++) {
    const cropMm = zone.kc * days.referenceMm[i]!;
    const share = adjustedDepletionShare(zone.depletionShare, cropMm);
    stress[i] = stressCoefficient(depleted, totalMm, share);
    depleted += stress[i]! * cropMm - days.rainMm[i]!;
    depleted = Math.min(totalMm, Math.max(0, depleted)); // below 0 it drains away
    depletionMm[i] = depleted;
  }
  return { depletionMm, stress };
}
