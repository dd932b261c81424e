import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import type { Outline } from '../../shared/farm/paddock.js';
import { cutOutline } from '../../src/outlines/cut-outline.js';
import { joinOutlines } from '../../src/outlines/join-outlines.js';
import { isOutline, ringAreaM2 } from '../../src/outlines/outline.js';

const RUNS = { numRuns: 150, seed: 20261125 };

/** Simple outlines with three to eight corners, up to some 200 m wide. */
const outlines = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 0, max: 20 })), {
    minLength: 3,
    maxLength: 8,
  })
  .map((corners): Outline => corners.map(([x, y]) => [10 + x / 1e4, 50 + y / 1e4]))
  .filter((outline) => isOutline(outline) && 50 < ringAreaM2(outline));

/** Crumbs of a square meter may be lost at each line, and long sides bulge on the ellipsoid. */
const isSameArea = (areaM2: number, expectedM2: number): boolean =>
  Math.abs(areaM2 - expectedM2) < 2 + 1e-4 * expectedM2;

describe('cutting and joining outlines', () => {
  it('cuts parts of the same area, which join to the whole again', () => {
    let cuts = 0;
    fc.assert(
      fc.property(outlines, fc.integer({ min: 2, max: 6 }), (outline, parts) => {
        const wholeM2 = ringAreaM2(outline);
        const strips = cutOutline(
          outline,
          Array.from({ length: parts }, () => 1 / parts),
        );
        if (!strips) return;
        cuts++;
        for (const strip of strips) {
          expect(isSameArea(ringAreaM2(strip), wholeM2 / parts)).toBe(true);
        }
        const joined = joinOutlines(strips);
        expect('outline' in joined && isSameArea(ringAreaM2(joined.outline), wholeM2)).toBe(true);
      }),
      RUNS,
    );
    expect(cuts).toBeGreaterThan(100);
  }, 30_000);

  it('joins any two outlines, or says why not', () => {
    fc.assert(
      fc.property(outlines, outlines, (one, other) => {
        const joined = joinOutlines([one, other]);
        expect('outline' in joined ? isOutline(joined.outline) : joined.because !== '').toBe(true);
      }),
      RUNS,
    );
  }, 30_000);

  it('works across the 180th meridian', () => {
    const outline: Outline = [
      [179.999, -17],
      [-179.997, -17],
      [-179.997, -17.001],
      [179.999, -17.001],
    ];
    const [west, east] = cutOutline(outline, [0.25, 0.75])!;
    expect(ringAreaM2(east!) / ringAreaM2(west!)).toBeCloseTo(3, 4);
    expect(west!.every(([longitude]) => 0 < longitude)).toBe(true);
    expect(joinOutlines([west!, east!])).toEqual({ outline: expect.any(Array) });
  });

  it('takes a paddock beside two others to share their fences', () => {
    const box = (x: number, y: number, width: number): Outline =>
      [
        [x, y],
        [x + width, y],
        [x + width, y + 100],
        [x, y + 100],
      ].map(([east, north]) => [-75.3 + east! / 1e5, 42.9 + north! / 1e5]);
    const joined = joinOutlines([box(0, 100, 300), box(0, 0, 90), box(90, 0, 210)]);
    expect('outline' in joined && joined.outline).toHaveLength(4);
  });

  it('keeps no outline around ground that is in none of the paddocks', () => {
    const side = (x: number, y: number, width: number, tall: number): Outline =>
      [
        [x, y],
        [x + width, y],
        [x + width, y + tall],
        [x, y + tall],
      ].map(([east, north]) => [-75.3 + east! / 1e5, 42.9 + north! / 1e5]);
    const frame = [
      side(0, 0, 90, 30),
      side(0, 60, 90, 30),
      side(0, 30, 30, 30),
      side(60, 30, 30, 30),
    ];
    expect(joinOutlines(frame)).toEqual({
      because: 'the outlines enclose ground that is in none of them',
    });
  });
});
