import type { Formula } from '../explain/formula.js';
import type { PastureTable } from '../tables/pasture-tables.js';

export const recalibrateFormulas = {
  factor: {
    id: 'farm-growth-factor',
    title: 'Your growth against the model',
    words:
      'Growth between your readings over the growth expected in the same days, averaged as ratios. Four imagined readings that agree with the model are averaged in, so that one reading does not throw the plan about.',
    symbols: 'f = exp(Σ ln(measured ÷ expected) ÷ (n + 4))',
    sources: ['ARITHMETIC'],
    mark: 'own-record',
  },
  off: {
    id: 'reading-against-plan',
    title: 'How far off the plan was',
    words: 'The height read, less what had been expected for that day, as a share of it.',
    symbols: '(h_read − h_expected) ÷ h_expected',
    sources: ['ARITHMETIC'],
    mark: 'own-record',
  },
} satisfies Record<string, Formula>;

export interface GrowthPair {
  readonly measuredKgPerHa: number;
  readonly expectedKgPerHa: number;
}

/**
 * Factor on growth from the farm's own readings: 1 without any, drawn slowly toward what they say.
 *
 * Pairs with hardly any growth on either side are left out. The factor stays between the table's
 * bounds.
 */
export function growthFactor(
  table: PastureTable['readingWeight'],
  pairs: readonly GrowthPair[],
): { factor: number; readings: number } {
  const ratios = pairs
    .filter(
      (p) => table.leastKgPerHa <= p.expectedKgPerHa && table.leastKgPerHa / 4 <= p.measuredKgPerHa,
    )
    .map((p) => Math.log(clamp(p.measuredKgPerHa / p.expectedKgPerHa, table)));
  const sum = ratios.reduce((a, b) => a + b, 0);
  const factor = Math.exp(sum / (ratios.length + table.priorReadings));
  return { factor: clamp(factor, table), readings: ratios.length };
}

const clamp = (
  ratio: number,
  { lowFactor, highFactor }: { lowFactor: number; highFactor: number },
): number => Math.min(highFactor, Math.max(lowFactor, ratio));
