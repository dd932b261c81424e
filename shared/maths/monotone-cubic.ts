/**
 * Cubic interpolation through given points that never overshoots: between two points the curve
 * stays between them, and a rising table gives a rising curve.
 *
 * Source: Fritsch and Carlson, Monotone Piecewise Cubic Interpolation, SIAM J. Numer. Anal. 17
 * (1980); tangents by the weighted harmonic mean (Fritsch and Butland 1984).
 *
 * @param xs strictly rising, at least 2
 * @param ys as many as xs
 * @returns the curve; outside the points it holds the end value
 * @throws RangeError when xs do not rise or the lengths differ
 */
export function monotoneCubic(xs: readonly number[], ys: readonly number[]): (x: number) => number {
  const n = xs.length;
  if (n < 2 || ys.length !== n) throw new RangeError('Two points or more, as many x as y.');
  const step = new Array<number>(n - 1);
  const slope = new Array<number>(n - 1);
  for (let i = 0; i < n - 1; i++) {
    step[i] = xs[i + 1]! - xs[i]!;
    if (!(0 < step[i]!)) throw new RangeError('The x of the points must rise.');
    slope[i] = (ys[i + 1]! - ys[i]!) / step[i]!;
  }
  const tangent = tangents(step, slope);

  return (x) => {
    if (x <= xs[0]!) return ys[0]!;
    if (xs[n - 1]! <= x) return ys[n - 1]!;
    let i = 0;
    while (xs[i + 1]! < x) i++;
    const h = step[i]!;
    const t = (x - xs[i]!) / h;
    const u = 1 - t;
    return (
      ys[i]! * (1 + 2 * t) * u * u +
      ys[i + 1]! * t * t * (3 - 2 * t) +
      h * t * u * (tangent[i]! * u - tangent[i + 1]! * t)
    );
  };
}

function tangents(step: readonly number[], slope: readonly number[]): number[] {
  const n = step.length + 1;
  const result = new Array<number>(n).fill(0);
  result[0] = endTangent(step[0]!, step[1], slope[0]!, slope[1]);
  result[n - 1] = endTangent(step[n - 2]!, step[n - 3], slope[n - 2]!, slope[n - 3]);
  for (let i = 1; i < n - 1; i++) {
    const a = slope[i - 1]!;
    const b = slope[i]!;
    if (a * b <= 0) continue; // a turning point: flat, so that nothing overshoots
    const left = 2 * step[i]! + step[i - 1]!;
    const right = step[i]! + 2 * step[i - 1]!;
    result[i] = (left + right) / (left / a + right / b);
  }
  return result;
}

/** One-sided three-point tangent, limited so that the end piece stays monotone. */
function endTangent(
  h0: number,
  h1: number | undefined,
  s0: number,
  s1: number | undefined,
): number {
  if (h1 === undefined || s1 === undefined) return s0;
  const t = ((2 * h0 + h1) * s0 - h0 * s1) / (h0 + h1);
  if (t * s0 <= 0) return 0;
  if (s0 * s1 <= 0 && Math.abs(3 * s0) < Math.abs(t)) return 3 * s0;
  return t;
}
