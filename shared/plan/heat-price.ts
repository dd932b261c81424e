import { fromFarm, type QuantityInput } from '../explain/quantity.js';
import type { Brooder } from '../farm/facility.js';
import type { Farm } from '../farm/farm.js';
import { shownPrice } from '../money/unit-price.js';

/** What the heat of a brooder costs: decimal text for a kWh, or for a liter of gas. */
export const heatPriceOf = (farm: Farm, kind: Brooder['heat']['kind']): string =>
  kind === 'gas' ? farm.gasPricePerL : farm.electricityPricePerKWh;

/** The same as an input of a sum, for one unit as the farm reads it. */
export function heatPriceInput(farm: Farm, kind: Brooder['heat']['kind']): QuantityInput {
  const price = heatPriceOf(farm, kind);
  if (kind !== 'gas') return fromFarm('Price of a kWh', `${price} ${farm.currency}`, 'text');
  const gasUnit = farm.units === 'us' ? 'gallon' : 'liter';
  const shown = shownPrice(price, 'L', farm.units);
  return fromFarm(`Price of a ${gasUnit}`, `${shown} ${farm.currency}`, 'text');
}
