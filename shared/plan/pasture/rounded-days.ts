/** Days of a series from one to before another, rounded to so many parts of one. */
export function rounded(values: Float64Array, from: number, to: number, parts: number): number[] {
  return Array.from(values.subarray(from, to), (value) => Math.round(value * parts) / parts);
}

/** Rounded so that their sums stay true: each takes over what the ones before it rounded away. */
export function steps(values: Float64Array, from: number, to: number, parts: number): number[] {
  let sum = 0;
  let said = 0;
  return Array.from(values.subarray(from, to), (value) => {
    sum += value;
    const step = Math.round(sum * parts) - said;
    said += step;
    return step / parts;
  });
}
