/**
 * Straight lines through given points.
 *
 * @param xs strictly rising, at least 2
 * @param ys as many as xs
 * @param beyond what the curve does past the last point: stays there, or goes on as it came
 * @returns the curve; before the first point it holds the first value
 * @throws RangeError when there are fewer than 2 points or the lengths differ
 */
export function straightLines(
  xs: readonly number[],
  ys: readonly number[],
  beyond: 'stays' | 'goes-on' = 'stays',
): (x: number) => number {
  const last = xs.length - 1;
  if (last < 1 || ys.length !== xs.length) {
    throw new RangeError('Two points or more, as many x as y.');
  }
  return (x) => {
    if (x <= xs[0]!) return ys[0]!;
    if (xs[last]! <= x && beyond === 'stays') return ys[last]!;
    let i = 0;
    while (i < last - 1 && xs[i + 1]! < x) i++;
    const t = (x - xs[i]!) / (xs[i + 1]! - xs[i]!);
    return ys[i]! + t * (ys[i + 1]! - ys[i]!);
  };
}
