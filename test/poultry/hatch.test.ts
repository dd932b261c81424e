import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { bothShares, chicksRange, storageLossShare } from '../../shared/poultry/hatch.js';
import { orderChances } from '../../shared/poultry/losses.js';
import { tables } from '../support/factories.js';

const { storage } = tables.hatching;

describe('storageLossShare', () => {
  it('loses nothing of eggs kept a week or less', () => {
    for (const days of [1, 3, 7]) expect(storageLossShare(storage, days)).toBe(0);
  });

  it('loses only of the older eggs', () => {
    // Laid evenly over ten days, three of ten are beyond a week, by 1, 2 and 3 days.
    expect(storageLossShare(storage, 10)).toBeCloseTo((0.01 + 0.02 + 0.03) / 10, 9);
  });

  it('never shrinks as the oldest egg gets older', () => {
    for (let days = 1; days < 21; days++) {
      expect(storageLossShare(storage, days)).toBeLessThanOrEqual(
        storageLossShare(storage, days + 1),
      );
    }
  });
});

const share = fc.record({
  mean: fc.double({ min: 0.05, max: 0.99, noNaN: true }),
  togetherness: fc.double({ min: 0, max: 0.2, noNaN: true }),
});

describe('bothShares', () => {
  it('leaves a share as it is beside one that loses nothing', () => {
    fc.assert(
      fc.property(share, (a) => {
        const both = bothShares(a, { mean: 1, togetherness: 0.1 });
        expect(both.mean).toBeCloseTo(a.mean, 9);
        expect(both.togetherness).toBeCloseTo(a.togetherness, 9);
      }),
    );
  });

  it('does not mind which comes first, and leaves less than either', () => {
    fc.assert(
      fc.property(share, share, (a, b) => {
        const [one, other] = [bothShares(a, b), bothShares(b, a)];
        expect(one.mean).toBeCloseTo(other.mean, 12);
        expect(one.togetherness).toBeCloseTo(other.togetherness, 9);
        expect(one.mean).toBeLessThanOrEqual(Math.min(a.mean, b.mean));
        expect(one.togetherness).toBeGreaterThanOrEqual(0);
        expect(one.togetherness).toBeLessThan(1);
      }),
    );
  });

  it('of shares that do not vary leaves one that does not', () => {
    const coin = { mean: 0.5, togetherness: 0 };
    expect(bothShares(coin, coin)).toEqual({ mean: 0.25, togetherness: 0 });
  });
});

describe('chicksRange', () => {
  it('holds eight hatches in ten, and never more chicks than eggs', () => {
    fc.assert(
      fc.property(share, fc.integer({ min: 1, max: 120 }), (hatching, eggs) => {
        const { low, high } = chicksRange(eggs, hatching, 0.1);
        expect(low).toBeLessThanOrEqual(high);
        expect(high).toBeLessThanOrEqual(eggs);
        const reach = (wanted: number) =>
          orderChances({
            wanted,
            survivingShare: hatching.mean,
            sexShare: 1,
            togetherness: hatching.togetherness,
          }).enough(eggs);
        if (0 < low) expect(reach(low)).toBeGreaterThanOrEqual(0.9);
        expect(reach(low + 1)).toBeLessThan(0.9);
      }),
      { numRuns: 60 },
    );
  });
});
