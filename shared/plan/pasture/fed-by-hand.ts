import type { PastureContext } from './pasture-context.js';
import type { Chosen } from './surplus.js';

/** Feed besides grass of one herd by day, kg of dry matter; the feed of cattle in quarantine included. */
export function fedByHand(
  { herdDays }: PastureContext,
  { books }: Chosen,
  h: number,
): Float64Array {
  const { demandKg, grassKg } = herdDays[h]!;
  return books.hayKg[h]!.map((kg, day) => kg + demandKg[day]! - grassKg[day]!);
}
