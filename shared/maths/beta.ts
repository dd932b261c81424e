/** Lanczos’ coefficients, g = 7 (from memory). */
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313,
  -176.61502916214059, 12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6,
  1.5056327351493116e-7,
];

/** Natural logarithm of the gamma function, x above 0. */
export function logGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  let sum = LANCZOS[0]!;
  for (let k = 1; k < LANCZOS.length; k++) sum += LANCZOS[k]! / (x - 1 + k);
  const t = x - 1 + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(t) - t + Math.log(sum);
}

/**
 * Share of a beta distribution with a and b below x: the regularized incomplete beta function.
 *
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 26.5.8, by Lentz’s way
 * of working out a continued fraction (from memory). Relative error about 10⁻¹⁰.
 */
export function betaBelow(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (1 <= x) return 1;
  const front = Math.exp(
    logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x),
  );
  return x < (a + 1) / (a + b + 2)
    ? (front * fraction(x, a, b)) / a
    : 1 - (front * fraction(1 - x, b, a)) / b;
}

const TINY = 1e-300;

function fraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / notNone(1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; m < 500; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / notNone(1 + even * d);
    c = notNone(1 + even / c);
    value *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / notNone(1 + odd * d);
    c = notNone(1 + odd / c);
    value *= d * c;
    if (Math.abs(d * c - 1) < 1e-11) break;
  }
  return value;
}

const notNone = (x: number): number => (Math.abs(x) < TINY ? TINY : x);

/** Chance of at least some successes among tries, each with the same chance. */
export function atLeast(successes: number, tries: number, chance: number): number {
  if (successes <= 0) return 1;
  return tries < successes ? 0 : betaBelow(chance, successes, tries - successes + 1);
}
