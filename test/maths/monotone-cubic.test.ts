import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { monotoneCubic } from '../../shared/maths/monotone-cubic.js';

/** Two to nine points with rising x and any y. */
const points = fc
  .array(
    fc.tuple(
      fc.double({ min: 0.01, max: 50, noNaN: true }),
      fc.double({ min: -100, max: 100, noNaN: true }),
    ),
    { minLength: 2, maxLength: 9 },
  )
  .map((steps) => {
    let x = 0;
    return steps.map(([step, y]) => ({ x: (x += step), y }));
  });
const xs = (list: readonly { x: number }[]): number[] => list.map((p) => p.x);
const ys = (list: readonly { y: number }[]): number[] => list.map((p) => p.y);

describe('monotoneCubic', () => {
  it('meets every point it is given', () => {
    fc.assert(
      fc.property(points, (list) => {
        const curve = monotoneCubic(xs(list), ys(list));
        for (const { x, y } of list) expect(Math.abs(curve(x) - y)).toBeLessThan(1e-9);
      }),
    );
  });

  it('never leaves the two points it runs between', () => {
    fc.assert(
      fc.property(points, fc.double({ min: 0, max: 1, noNaN: true }), (list, share) => {
        const curve = monotoneCubic(xs(list), ys(list));
        const outside = list.slice(1).filter((b, i) => {
          const a = list[i]!;
          const y = curve(a.x + share * (b.x - a.x));
          return !(Math.min(a.y, b.y) - 1e-9 <= y && y <= Math.max(a.y, b.y) + 1e-9);
        });
        expect(outside).toEqual([]);
      }),
      { numRuns: 500 },
    );
  });

  it('rises all the way when the points rise', () => {
    fc.assert(
      fc.property(points, (list) => {
        const rising = [...ys(list)].sort((a, b) => a - b);
        const curve = monotoneCubic(xs(list), rising);
        const [from, to] = [list[0]!.x, list.at(-1)!.x];
        const drawn = Array.from({ length: 201 }, (_, k) => curve(from + ((to - from) * k) / 200));
        expect(drawn.findIndex((y, k) => !(0 === k || drawn[k - 1]! - 1e-9 <= y))).toBe(-1);
      }),
    );
  });

  it('draws a straight line through points on one', () => {
    const curve = monotoneCubic([0, 1, 5, 7], [3, 5, 13, 17]); // y = 3 + 2x
    for (const x of [0.3, 2, 4.9, 6.5]) expect(curve(x)).toBeCloseTo(3 + 2 * x, 9);
  });

  it('holds the end values outside the points', () => {
    const curve = monotoneCubic([1, 2], [10, 20]);
    expect(curve(-5)).toBe(10);
    expect(curve(99)).toBe(20);
  });

  it('refuses one point, unequal lengths and x that do not rise', () => {
    expect(() => monotoneCubic([1], [1])).toThrow(RangeError);
    expect(() => monotoneCubic([1, 2], [1])).toThrow(RangeError);
    expect(() => monotoneCubic([1, 1], [1, 2])).toThrow('must rise');
    expect(() => monotoneCubic([2, 1], [1, 2])).toThrow(RangeError);
  });
});
