import Big from 'big.js';
import { formatPrice, type Reader } from '../units/format.js';
import { fromShown, type Unit, type UnitSystem } from '../units/unit.js';

/** Decimals that a price keeps when it is turned into one of another unit. */
const DIGITS = 3;
/** One of what is poured or metered: a price says of what it is. */
const ONE: Partial<Record<Unit, Record<UnitSystem, string>>> = {
  L: { metric: 'a liter', us: 'a gallon' },
  kWh: { metric: 'a kWh', us: 'a kWh' },
  kg: { metric: 'a kg', us: 'a lb' },
};

/**
 * The price of one unit as the farm reads it, from that of one stored unit: of a gallon, from that
 * of a liter. What is counted keeps its price as it was typed.
 *
 * @param price decimal text, as `isPrice` takes it
 */
export function shownPrice(price: string, unit: Unit, units: UnitSystem): string {
  const stored = fromShown(1, unit, units);
  return stored === 1 ? price : new Big(new Big(price).times(stored).toFixed(DIGITS)).toString();
}

/** The same with its currency, and what it is the price of where that is measured: "$3.028 a gallon". */
export function sayPrice(
  price: string,
  unit: Unit,
  { units, currency }: Pick<Reader, 'units' | 'currency'>,
): string {
  const shown = formatPrice(shownPrice(price, unit, units), currency);
  const one = ONE[unit]?.[units];
  return one === undefined ? shown : `${shown} ${one}`;
}
