import { from, fromTable, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { hayFormulas, hayNeededKg } from '../../pasture/hay.js';
import { rowById } from '../../tables/tables.js';
import type { PastureContext } from './pasture-context.js';
import { chosenOr } from './surplus.js';

/**
 * Feed besides grass as hay in store, with what is lost there and at the feeder.
 *
 * @param feed short on grass, and before and after it, kg of dry matter
 */
export function hayToStore(
  { tables, choices }: PastureContext,
  { inSeason, outside }: { inSeason: NumberQuantity; outside: NumberQuantity },
): { readonly toStore: NumberQuantity; readonly hayPerDryKg: number } {
  const { hay } = tables.pasture;
  const feeding = rowById(hay.feeding, choices.feedingId ?? 'ring');
  const storing = rowById(hay.storing, choices.storingId ?? 'barn');
  const hayFor = (kg: number, storeLoss: number, feedLoss: number): number =>
    hayNeededKg({ dryMatterKg: kg, dryMatterShare: hay.dryMatterShare, storeLoss, feedLoss });
  const allKg = inSeason.value + outside.value;
  const toStore = quantity(
    'Hay for the days of the plan',
    hayFor(allKg, storing.loss, feeding.loss),
    'kg',
    hayFormulas.need,
    [
      from(inSeason, 'F₁'),
      from(outside, 'F₂'),
      fromTable(hay, 'Dry share of hay', hay.dryMatterShare, 'share', 'dm'),
      fromTable(
        chosenOr(choices.storingId, storing),
        ...([`Lost in store, ${storing.name}`, storing.loss, 'share', 'l_store'] as const),
      ),
      fromTable(
        chosenOr(choices.feedingId, feeding),
        ...([`Lost at feeding, ${feeding.name}`, feeding.loss, 'share', 'l_feed'] as const),
      ),
    ],
    {
      spread: {
        low: hayFor(allKg, storing.low, feeding.low),
        high: hayFor(allKg, storing.high, feeding.high),
        because: 'trials of the same feeder differ up to threefold',
      },
    },
  );
  return { toStore, hayPerDryKg: hayFor(1, storing.loss, feeding.loss) };
}
