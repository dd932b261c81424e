/**
 * What one of an amount must bring to pay for all that it costs.
 *
 * @param costs in whole coins
 * @param amount kilograms, dozens or birds, above 0
 * @returns coins for one, not rounded
 */
export const mustBringMinor = (costs: readonly number[], amount: number): number =>
  costs.reduce((sum, each) => sum + each, 0) / amount;
