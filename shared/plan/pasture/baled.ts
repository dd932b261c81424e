import type { Formula } from '../../explain/formula.js';
import { fromFarm, fromTable, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { rowById } from '../../tables/tables.js';
import type { PastureContext } from './pasture-context.js';
import { chosenOr } from './surplus.js';

export const baledFormulas = {
  baled: {
    id: 'hay-baled',
    title: 'Hay baled already',
    words:
      'Bales that were told of mowing, since what lies in store was counted; where nothing was counted, since the season began. They weigh what a bale of your kind does.',
    symbols: 'H_baled = n·bale',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Hay of bales that were told since the store was counted. */
export function baledOf({
  choices,
  mowings = [],
  span,
  tables,
}: PastureContext): NumberQuantity | undefined {
  const { hayInStoreKg, hayInStoreOn, baleId } = choices;
  // Of a store that was counted nobody knows when, the bales may be part.
  if (hayInStoreKg !== undefined && hayInStoreOn === undefined) return undefined;
  const since = hayInStoreKg === undefined ? span.first : hayInStoreOn!;
  const bales = mowings.reduce((sum, each) => sum + (since < each.date ? (each.bales ?? 0) : 0), 0);
  if (bales === 0) return undefined;
  const { bales: kinds } = tables.pasture.hay;
  const bale = rowById(kinds, baleId ?? kinds.at(-1)!.id);
  return quantity('Hay baled already', bales * bale.kg, 'kg', baledFormulas.baled, [
    fromFarm('Bales told', bales, 'bales', 'n'),
    fromTable(
      chosenOr(baleId, tables.pasture.hay),
      ...([`One bale, ${bale.name}`, bale.kg, 'kg', 'bale'] as const),
    ),
  ]);
}
