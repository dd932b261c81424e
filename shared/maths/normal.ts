/**
 * Share of a standard normal distribution below z.
 *
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 7.1.26 by way of
 * Φ(z) = ½ erfc(−z/√2); absolute error below 1.5·10⁻⁷.
 */
export function normalBelow(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const tail =
    0.5 *
    t *
    (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429)))) *
    Math.exp(-x * x);
  return z < 0 ? tail : 1 - tail;
}

/** Height of the standard normal curve at z. */
export const normalDensity = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/** The z below which a share of a standard normal distribution lies; for shares of 10⁻⁶ to 1 − 10⁻⁶. */
export function normalQuantile(share: number): number {
  let [low, high] = [-5, 5];
  for (let k = 0; k < 40; k++) {
    const middle = (low + high) / 2;
    if (normalBelow(middle) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Gauss and Legendre's points and weights of order six on −1 to 1 (Abramowitz and Stegun 25.4.30). */
const POINTS = [0.2386191860831969, 0.6612093864662645, 0.9324695142031521];
const WEIGHTS = [0.467913934572691, 0.3607615730481386, 0.1713244923791704];

/**
 * Chance that two standard normal quantities with a correlation both lie above a and b.
 *
 * Source: Φ(−a)Φ(−b) + (1/2π) ∫₀^{asin ρ} exp(−(a² + b² − 2ab sin t)/(2 cos² t)) dt (Drezner and
 * Wesolowsky 1990 in the form of Genz 2004, both from memory), by Gauss and Legendre's rule.
 */
export function bothAbove(a: number, b: number, correlation: number): number {
  const half = Math.asin(correlation) / 2;
  let sum = 0;
  for (let k = 0; k < POINTS.length; k++) {
    for (const sign of [-1, 1]) {
      const s = Math.sin(half * (1 + sign * POINTS[k]!));
      sum += WEIGHTS[k]! * Math.exp(-(a * a + b * b - 2 * a * b * s) / (2 * (1 - s * s)));
    }
  }
  return normalBelow(-a) * normalBelow(-b) + (half * sum) / (2 * Math.PI);
}
