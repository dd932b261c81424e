import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import type { Outline } from '../../shared/farm/paddock.js';
import { planeAt, type PointM } from '../../shared/maths/plane.js';
import { fenceOfOutlines, shareOfBlock } from '../../shared/pasture/shared-fence.js';

const plane = planeAt([-75.3, 42.9]);
const drawn = (...points: PointM[]): Outline => points.map((point) => plane.toCorner(point));
const rectangle = (x: number, y: number, wide: number, high: number, off = 0): Outline =>
  drawn([x + off, y], [x + wide, y + off], [x + wide - off, y + high], [x, y + high - off]);
const fenceM = (...outlines: Outline[]): number => {
  const { eachM, sharedM } = fenceOfOutlines(outlines);
  return eachM - sharedM;
};

const MILE_M = 1609.344;

describe('fenceOfOutlines', () => {
  it('counts a fence between two once: a section in four quarters takes six miles, not eight', () => {
    const half = MILE_M / 2;
    const quarters = [0, half].flatMap((x) => [0, half].map((y) => rectangle(x, y, half, half)));
    expect(fenceOfOutlines(quarters).eachM / MILE_M).toBeCloseTo(8, 3);
    expect(fenceM(...quarters) / MILE_M).toBeCloseTo(6, 3);
  });

  it('shares only the length along which they lie side by side', () => {
    expect(fenceM(rectangle(0, 0, 100, 100), rectangle(100, 60, 100, 100))).toBeCloseTo(760, 1);
    expect(fenceM(rectangle(0, 0, 100, 100), rectangle(100, 100, 100, 100))).toBeCloseTo(800, 1);
  });

  it('takes corners walked with a phone for the same fence, and a lane between for two', () => {
    const walked = rectangle(101, 0, 100, 100, 2);
    expect(Math.abs(fenceM(rectangle(0, 0, 100, 100), walked) - 700)).toBeLessThan(10);
    expect(fenceM(rectangle(0, 0, 100, 100), rectangle(106, 0, 100, 100))).toBeCloseTo(800, 1);
  });

  it('takes a fence across a corner of another for its own', () => {
    const triangle = drawn([100, 0], [200, 0], [100, 100]);
    const across = drawn([200, 0], [200, 100], [100, 100]);
    expect(fenceM(triangle, across)).toBeCloseTo(400 + 100 * Math.SQRT2, 1);
  });

  it('is never longer than each by itself, and knows nothing without outlines', () => {
    const at = fc.integer({ min: -500, max: 500 });
    const long = fc.integer({ min: 20, max: 300 });
    const any = fc.tuple(at, at, long, long).map((values) => rectangle(...values));
    fc.assert(
      fc.property(any, any, (one, other) => {
        const { eachM, sharedM } = fenceOfOutlines([one, other]);
        expect(sharedM).toBeGreaterThanOrEqual(0);
        expect(sharedM).toBeLessThanOrEqual(eachM / 2 + 1e-6);
      }),
    );
    expect(fenceOfOutlines([])).toEqual({ eachM: 0, sharedM: 0 });
  });
});

describe('shareOfBlock', () => {
  it.each([
    // Drawn and counted by hand, in sides of a square: 1 of 1; 7 of 8; 12 of 16; 24 of 36.
    [1, 1, 1],
    [2, 1, 7 / 8],
    [4, 1, 12 / 16],
    [9, 1, 24 / 36],
    // Twelve of one by two in six columns and two rows: 46 short sides of 72.
    [12, 2, 46 / 72],
    // Three in a row and two below them: 15 sides of 20, as a corner is left out.
    [5, 1, 15 / 20],
  ])('of %d paddocks, %d times as long as wide, is %d', (count, longToShort, share) => {
    expect(shareOfBlock(count, longToShort)).toBeCloseTo(share, 9);
  });

  it('falls toward a half', () => {
    expect(shareOfBlock(10_000, 1)).toBeGreaterThan(0.5);
    expect(shareOfBlock(10_000, 1)).toBeLessThan(0.51);
  });
});
