import { fromRow, type QuantityInput } from '../explain/quantity.js';
import type { Brooder } from '../farm/facility.js';
import type { Farm } from '../farm/farm.js';
import { formatPrice } from '../units/format.js';
import { literPriceInput } from './prices.js';

/** What the heat of a brooder costs: decimal text for a kWh, or for a liter of gas. */
export const heatPriceOf = (farm: Farm, kind: Brooder['heat']['kind']): string =>
  kind === 'gas' ? farm.gasPricePerL : farm.electricityPricePerKWh;

/** The same as an input of a sum. */
export function heatPriceInput(farm: Farm, kind: Brooder['heat']['kind']): QuantityInput {
  const price = heatPriceOf(farm, kind);
  return kind === 'gas'
    ? literPriceInput(farm)
    : fromRow(
        farm,
        'electricityPricePerKWh',
        'Price of electricity',
        `${formatPrice(price, farm.currency)} a kWh`,
        'text',
      );
}
