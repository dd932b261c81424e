// Loops: these series are most of a plan's numbers, and an iterator makes an object for each of them.

/** Days of a series from one to before another, rounded to so many parts of one. */
export function rounded(values: Float64Array, from: number, to: number, parts: number): number[] {
  const days: number[] = [];
  for (let day = from; day < to; day++) days.push(Math.round(values[day]! * parts) / parts);
  return days;
}

/** Rounded so that their sums stay true: each takes over what the ones before it rounded away. */
export function steps(values: Float64Array, from: number, to: number, parts: number): number[] {
  let sum = 0;
  let said = 0;
  const days: number[] = [];
  for (let day = from; day < to; day++) {
    sum += values[day]!;
    const step = Math.round(sum * parts) - said;
    said += step;
    days.push(step / parts);
  }
  return days;
}
