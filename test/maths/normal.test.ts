import { describe, expect, it } from '@jest/globals';
import { bothAbove, normalBelow, normalQuantile } from '../../shared/maths/normal.js';

describe('the normal distribution', () => {
  // Abramowitz and Stegun, Handbook of Mathematical Functions (1964), Table 26.1.
  it.each([
    [0, 0.5],
    [0.5, 0.69146],
    [1, 0.84134],
    [1.96, 0.975],
    [-2.5, 0.00621],
    [3, 0.99865],
  ])('below %d has %d of all', (z, share) => {
    expect(normalBelow(z)).toBeCloseTo(share, 4);
    expect(normalQuantile(share)).toBeCloseTo(z, 2);
  });

  // W. F. Sheppard (1899): both above 0 in 1/4 + asin ρ / 2π.
  it.each([0, 0.5, 0.68, 0.75, 0.85])('of two with correlation %d', (rho) => {
    expect(bothAbove(0, 0, rho)).toBeCloseTo(0.25 + Math.asin(rho) / (2 * Math.PI), 6);
    expect(bothAbove(-8, 0.7, rho)).toBeCloseTo(normalBelow(-0.7), 6);
  });
});
