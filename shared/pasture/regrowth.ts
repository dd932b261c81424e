import type { Formula } from '../explain/formula.js';

export const regrowthFormulas = {
  regrowth: {
    id: 'sward-regrowth',
    title: 'Regrowth of the sward',
    words:
      'Slow while little leaf stands, fastest at half of the ceiling, and slow again as the stand shades itself. The rate is such that a stand grows from the residual to the ready height in the time the month’s growth takes; weather and the farm’s own readings scale it.',
    symbols:
      'dW/dt = r·W·(1 − W/K), r = G·f·ln[W_in·(K − W_res) ÷ (W_res·(K − W_in))] ÷ (W_in − W_res)',
    sources: ['LOGISTIC'],
    mark: 'from-memory',
  },
} satisfies Record<string, Formula>;

/**
 * Relative rate a day, at which a stand grows from one mass to another at a mean of
 * `meanKgPerHaDay`: growth by month is measured on grazed swards, which never stand at their
 * fastest for long.
 *
 * Both masses lie above 0 and below the ceiling, the first below the second.
 */
export function ratePerDayOfMean(
  meanKgPerHaDay: number,
  fromKgPerHa: number,
  toKgPerHa: number,
  ceilingKgPerHa: number,
): number {
  return (
    (meanKgPerHaDay * logOdds(fromKgPerHa, toKgPerHa, ceilingKgPerHa)) / (toKgPerHa - fromKgPerHa)
  );
}

const logOdds = (from: number, to: number, ceiling: number): number =>
  Math.log((to * (ceiling - from)) / (from * (ceiling - to)));

/**
 * Mass after a while of undisturbed growth, kg/ha: the logistic curve in closed form.
 *
 * A stand at or above the ceiling neither grows nor falls.
 *
 * @param growthSum relative rates of the days, summed; 0 or more
 */
export function regrown(massKgPerHa: number, growthSum: number, ceilingKgPerHa: number): number {
  if (massKgPerHa <= 0 || ceilingKgPerHa <= massKgPerHa) return Math.max(0, massKgPerHa);
  return ceilingKgPerHa / (1 + (ceilingKgPerHa / massKgPerHa - 1) * Math.exp(-growthSum));
}

/**
 * Share of full growth at a mean air temperature: none at the base, rising evenly to the optimum,
 * falling evenly from its warm end to none. The shape is a planning guess.
 */
export function temperatureFactor(
  range: {
    readonly baseC: number;
    readonly optimumFromC: number;
    readonly optimumToC: number;
    readonly stopC: number;
  },
  meanC: number,
): number {
  if (meanC <= range.baseC || range.stopC <= meanC) return 0;
  if (meanC < range.optimumFromC) return (meanC - range.baseC) / (range.optimumFromC - range.baseC);
  if (meanC <= range.optimumToC) return 1;
  return (range.stopC - meanC) / (range.stopC - range.optimumToC);
}
