/** Lanczos’ coefficients, g = 7 (from memory). */
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313,
  -176.61502916214059, 12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6,
  1.5056327351493116e-7,
];

/** Natural logarithm of the gamma function, x above 0. */
function logGamma(x: number): number {
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
 * of working out a continued fraction (from memory). Relative error about 10⁻⁸.
 *
 * @param logBeta of a and b, where it is known already
 */
export function betaBelow(x: number, a: number, b: number, logBeta = logBetaOf(a, b)): number {
  if (x <= 0) return 0;
  if (1 <= x) return 1;
  const front = Math.exp(a * Math.log(x) + b * Math.log1p(-x) - logBeta);
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
    if (Math.abs(d * c - 1) < 1e-9) break;
  }
  return value;
}

const notNone = (x: number): number => (Math.abs(x) < TINY ? TINY : x);

/** Natural logarithm of the beta function of a and b, both above 0. */
export const logBetaOf = (a: number, b: number): number =>
  logGamma(a) + logGamma(b) - logGamma(a + b);

/** Chance of at least some successes among tries, for each of some chances of a single one. */
export function atLeast(successes: number, tries: number, chances: Float64Array): Float64Array {
  if (successes <= 0 || tries < successes) {
    return new Float64Array(chances.length).fill(successes <= 0 ? 1 : 0);
  }
  const [a, b] = [successes, tries - successes + 1];
  const logBeta = logBetaOf(a, b);
  return chances.map((chance) => betaBelow(chance, a, b, logBeta));
}
