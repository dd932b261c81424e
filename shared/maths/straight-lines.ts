/**
 * Straight lines through given points.
 *
 * @param xs strictly rising, at least 2
 * @param ys as many as xs
 * @returns the curve; outside the points it holds the end value
 * @throws RangeError when there are fewer than 2 points or the lengths differ
 */
export function straightLines(xs: readonly number[], ys: readonly number[]): (x: number) => number {
  const last = xs.length - 1;
  if (last < 1 || ys.length !== xs.length) {
    throw new RangeError('Two points or more, as many x as y.');
  }
  return (x) => {
    if (x <= xs[0]!) return ys[0]!;
    if (xs[last]! <= x) return ys[last]!;
    let i = 0;
    while (xs[i + 1]! < x) i++;
    const t = (x - xs[i]!) / (xs[i + 1]! - xs[i]!);
    return ys[i]! + t * (ys[i + 1]! - ys[i]!);
  };
}
