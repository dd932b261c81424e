import type { Formula } from '../explain/formula.js';
import type { ProcessingTable } from '../tables/processing-tables.js';

export const iceFormulas = {
  ice: {
    id: 'ice',
    title: 'Ice to chill',
    words:
      'Heat that carcasses and the water over them must lose, and what the day’s air lets in while they chill, over what a kilogram of ice takes up as it melts; never less than the half weight of ice for a weight of carcass that is common practice. Keep ice floating to the end.',
    symbols: 'I = N·W_d·max(½, (c·(T_b − T₀) + w·c_w·(T_w − T₀) + k·(T_a − T₀)·h) ÷ L)',
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
    words:
      'Ice of a day divided by what a bag holds, rounded up, and the days added: ice does not keep from one to the next.',
    symbols: 'n = Σ ⌈I_day ÷ b⌉',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

const SECONDS_PER_HOUR = 3600;
const J_PER_KJ = 1000;

/**
 * Ice for each kilogram of carcass, kg: a balance of heat from scalding-warm to ice-cold, and no less
 * than habit takes on a cool day, because ice that is short cannot be made up.
 *
 * Left out: ice that was wet when it was bought, tubs in the sun, water that is changed.
 *
 * @param airC of the afternoon, and `waterC` of tap or well; below the end they take no ice
 */
export function icePerCarcass(
  { ice, iceBalance }: Pick<ProcessingTable, 'ice' | 'iceBalance'>,
  { airC, waterC }: { readonly airC: number; readonly waterC: number },
): number {
  const { carcassC, carcassKJPerKgK, waterKJPerKgK, meltKJPerKg } = iceBalance;
  const { waterPerCarcass, endC, airWPerKPerKg, hours } = iceBalance;
  const carcass = carcassKJPerKgK * (carcassC - endC);
  const water = waterPerCarcass * waterKJPerKgK * Math.max(0, waterC - endC);
  const air = (airWPerKPerKg * Math.max(0, airC - endC) * hours * SECONDS_PER_HOUR) / J_PER_KJ;
  return Math.max(ice.low, (carcass + water + air) / meltKJPerKg);
}
