import type { Formula } from '../explain/formula.js';
import { fromFarm, fromTable, quantity, type NumberQuantity } from '../explain/quantity.js';
import type { Girth } from '../farm/girth.js';
import type { CattleTable } from '../tables/pasture-tables.js';
import { CM_PER_IN, KG_PER_LB } from '../units/convert.js';

export const girthFormulas = {
  weight: {
    id: 'weight-of-girth',
    title: 'Weight by girth and length',
    words:
      'Girth times girth times length in inches, divided by 300, are pounds. Stand her square, head up, on level ground, and pull the tape snug.',
    symbols: 'W = G²·L ÷ 300 (in, lb)',
    sources: [],
    mark: 'published',
  },
} satisfies Record<string, Formula>;

/**
 * Weight of one animal by its girth and length, kg; for cattle of 100 to 900 kg.
 *
 * It reads too high for long-legged dairy heifers: the spread says by how much.
 */
export function weightOfGirth(
  { girthCm, lengthCm }: Girth,
  { rule, tooHeavyKg }: CattleTable['girth'],
): NumberQuantity {
  const cubicInches = (girthCm / CM_PER_IN) ** 2 * (lengthCm / CM_PER_IN);
  const kg = (KG_PER_LB * cubicInches) / rule.cubicInchesPerLb;
  return quantity(
    'Weight by girth',
    kg,
    'kg',
    girthFormulas.weight,
    [
      fromFarm('Girth', girthCm, 'cm', 'G'),
      fromFarm('Length', lengthCm, 'cm', 'L'),
      fromTable(rule, 'Cubic inches to a pound', rule.cubicInchesPerLb, 'count'),
    ],
    {
      rows: [tooHeavyKg],
      spread: { low: Math.max(0, kg - tooHeavyKg.high), high: kg, because: tooHeavyKg.because },
    },
  );
}
