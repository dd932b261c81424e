import type { Formula } from '../explain/formula.js';
import { leastAt } from '../maths/golden-section.js';

export const gompertzFormulas = {
  gompertz: {
    id: 'gompertz-growth',
    title: 'Gompertz growth curve',
    words:
      'Weight climbs toward an adult weight; the rate sets how fast. The age of fastest growth follows from the weight at hatch.',
    symbols: 'W = A·exp(−exp(−B·(t − t*))), t* = ln(ln(A ÷ W₀)) ÷ B',
    sources: ['GOMPERTZ_FITS'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

export interface Gompertz {
  readonly asymptoteKg: number;
  readonly ratePerDay: number;
  readonly hatchKg: number;
}

/**
 * Live weight by the Gompertz curve, W = A·exp(−exp(−B(t − t*))), with t* from the hatch weight.
 *
 * Source: PMC7149552, Table 1. Valid from hatch on; beyond the fitted ages it is extrapolation.
 *
 * @returns kg
 */
export function gompertzWeightKg(curve: Gompertz, ageDays: number): number {
  const { asymptoteKg, ratePerDay, hatchKg } = curve;
  const inflectionDay = Math.log(Math.log(asymptoteKg / hatchKg)) / ratePerDay;
  return asymptoteKg * Math.exp(-Math.exp(-ratePerDay * (ageDays - inflectionDay)));
}

/**
 * The Gompertz curve nearest to given weights by least squares, through the hatch weight.
 *
 * For each rate the best asymptote is found by golden section; the rate is then refined in the
 * same way. Plenty for a handful of points, and free of starting guesses.
 *
 * @param points at least two weighings after hatch
 */
export function fitGompertz(
  points: readonly { readonly ageDays: number; readonly weightKg: number }[],
  hatchKg: number,
): Gompertz {
  const heaviest = Math.max(...points.map((p) => p.weightKg));
  const misfit = (asymptoteKg: number, ratePerDay: number): number => {
    const curve = { asymptoteKg, ratePerDay, hatchKg };
    return points.reduce(
      (sum, p) => sum + (gompertzWeightKg(curve, p.ageDays) - p.weightKg) ** 2,
      0,
    );
  };
  const bestAsymptote = (rate: number): number =>
    leastAt((a) => misfit(a, rate), heaviest * 1.01, heaviest * 6);
  const ratePerDay = leastAt((rate) => misfit(bestAsymptote(rate), rate), 0.008, 0.09);
  return { asymptoteKg: bestAsymptote(ratePerDay), ratePerDay, hatchKg };
}
