import type { NumberQuantity } from '../../explain/quantity.js';

/** What the farm's trips for feed cost a kilogram fetched: they are made for all batches together. */
export interface Fetching {
  /** Of all feed. */
  readonly perKg: NumberQuantity;
  /** Of the feed of one batch, by its id. */
  readonly batches: Readonly<Record<string, NumberQuantity>>;
}
