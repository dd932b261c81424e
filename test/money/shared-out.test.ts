import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { sharedOut } from '../../shared/money/shared-out.js';

describe('sharedOut', () => {
  it('adds up to the amount, each share within a coin of its exact one', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1e9 }),
        fc.array(fc.double({ min: 0.01, max: 1e5, noNaN: true }), { minLength: 1, maxLength: 12 }),
        (minor, weights) => {
          const shares = sharedOut(minor, weights);
          const all = weights.reduce((sum, each) => sum + each, 0);
          expect(shares.reduce((sum, each) => sum + each, 0)).toBe(minor);
          shares.forEach((share, k) =>
            expect(Math.abs(share - (minor * weights[k]!) / all)).toBeLessThanOrEqual(1),
          );
        },
      ),
    );
  });

  it('shares nothing among those who bear nothing', () => {
    expect(sharedOut(700, [0, 0])).toEqual([0, 0]);
    expect(sharedOut(700, [0, 2])).toEqual([0, 700]);
  });
});
