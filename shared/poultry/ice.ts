import type { Formula } from '../explain/formula.js';
import type { ProcessingTable } from '../tables/bird-tables.js';

export const iceFormulas = {
  ice: {
    id: 'ice',
    title: 'Ice to chill',
    words:
      'Heat that carcasses and the water over them must lose, and what the day’s air lets in while they chill, over what a kilogram of ice takes up as it melts. Keep ice floating to the end: half to a whole weight of ice for a weight of carcass is common practice.',
    symbols: 'I = N·W_d·(c·(T_b − T₀) + w·c_w·(T_w − T₀) + k·(T_a − T₀)·h) ÷ L',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  tapWater: {
    id: 'tap-water',
    title: 'Water from the tap or well',
    words: 'Ground and pipes hold about the average air of the whole year.',
    symbols: 'T_w = mean of the year',
    sources: [],
    mark: 'estimate',
  },
  bags: {
    id: 'ice-bags',
    title: 'Bags of ice',
    words: 'Ice divided by what a bag holds, rounded up.',
    symbols: 'n = ⌈I ÷ b⌉',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

const SECONDS_PER_HOUR = 3600;
const J_PER_KJ = 1000;

/**
 * Ice for each kilogram of carcass, kg: a balance of heat from scalding-warm to ice-cold.
 *
 * Left out: ice that was wet when it was bought, tubs in the sun, water that is changed.
 *
 * @param airC of the afternoon, and `waterC` of tap or well; below the end they take no ice
 */
export function icePerCarcass(
  {
    carcassC,
    carcassKJPerKgK,
    waterKJPerKgK,
    meltKJPerKg,
    waterPerCarcass,
    endC,
    airWPerKPerKg,
    hours,
  }: ProcessingTable['iceBalance'],
  { airC, waterC }: { readonly airC: number; readonly waterC: number },
): number {
  const carcass = carcassKJPerKgK * (carcassC - endC);
  const water = waterPerCarcass * waterKJPerKgK * Math.max(0, waterC - endC);
  const air = (airWPerKPerKg * Math.max(0, airC - endC) * hours * SECONDS_PER_HOUR) / J_PER_KJ;
  return (carcass + water + air) / meltKJPerKg;
}
