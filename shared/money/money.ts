import Big from 'big.js';
import { minorDigits } from '../units/format.js';

/** Decimal text as people type prices: digits, a point, at most six decimals. No sign. */
const PRICE = /^\d{1,9}(\.\d{1,6})?$/;
export const isPrice = (text: unknown): text is string =>
  typeof text === 'string' && PRICE.test(text);

/**
 * Price × amount in whole minor units (cents), rounded half up once.
 *
 * @param price decimal text, major units for one unit of the amount
 */
export function costMinor(price: string, amount: number, currency: string): number {
  return Number(
    new Big(price)
      .times(amount)
      .times(10 ** minorDigits(currency))
      .round(0, Big.roundHalfUp)
      .toString(),
  );
}

/** Whole bags that hold an amount. */
export const bagsFor = (kg: number, bagKg: number): number =>
  Math.max(0, Math.ceil(kg / bagKg - 1e-9));
