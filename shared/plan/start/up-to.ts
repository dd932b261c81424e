/** The next whole number of steps; four decimals, which no rounding of a step goes past. */
export const upTo = (value: number, step: number): number =>
  Number((Math.max(1, Math.ceil(value / step - 1e-6)) * step).toFixed(4));
