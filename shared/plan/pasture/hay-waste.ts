import { hayNeededKg } from '../../pasture/hay.js';
import { rowById } from '../../tables/tables.js';
import type { PastureRequest } from './pasture-request.js';

/** Hay of a kilogram that cattle eat: what is lost in store and at the feeder is in it. */
export function wasteOf({ tables, choices }: Pick<PastureRequest, 'tables' | 'choices'>): number {
  const { hay } = tables.pasture;
  return hayNeededKg({
    ...{ dryMatterKg: 1, dryMatterShare: 1 },
    storeLoss: rowById(hay.storing, choices.storingId ?? 'barn').loss,
    feedLoss: rowById(hay.feeding, choices.feedingId ?? 'ring').loss,
  });
}
