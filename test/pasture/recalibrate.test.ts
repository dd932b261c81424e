import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { growthFactors, isGrowth, type GrowthPair } from '../../shared/pasture/recalibrate.js';
import { tables } from '../support/factories.js';

const weight = tables.pasture.readingWeight;
const FULL = 1e6;
const pairs = (count: number, ratio: number, expectedKgPerHa = FULL): GrowthPair[] =>
  Array.from({ length: count }, () => ({
    measuredKgPerHa: ratio * expectedKgPerHa,
    expectedKgPerHa,
  }));
const one = (given: readonly GrowthPair[]) => growthFactors(weight, [given]).groups[0]!;
const ratio = fc.double({ min: 0.05, max: 8, noNaN: true });
const kgPerHa = fc.double({ min: 0, max: 4000, noNaN: true });
const somePairs = fc.array(fc.record({ measuredKgPerHa: kgPerHa, expectedKgPerHa: kgPerHa }), {
  maxLength: 30,
});

describe('growthFactors', () => {
  it('are 1 without readings', () => {
    expect(growthFactors(weight, [[], []])).toMatchObject({
      farm: 1,
      groups: [
        { factor: 1, readings: 0 },
        { factor: 1, readings: 0 },
      ],
    });
  });

  it.each([
    // Of the four that agree with the model and those read, by hand: (4 + n × r) ÷ (4 + n).
    [1, 0.5, 0.9],
    [4, 0.7, 0.85],
    [12, 0.7, 0.775],
    [100, 0.7, 0.7115],
    [100, 1.6, 1.5769],
  ])('come after %d readings in full growth that say %d to %d', (count, says, factor) => {
    const found = one(pairs(count, says));
    expect(found.factor).toBeCloseTo(factor, 4);
    expect(found.readings).toBe(count);
  });

  it('count a reading for half where growth is to the misreading as 1 to the spread of growth', () => {
    const half = weight.readingErrorKgPerHa / weight.growthSpread;
    const { factor, weight: of } = one(pairs(8, 1.2, half));
    expect(of).toBeCloseTo(4, 9);
    expect(factor).toBeCloseTo((4 + 4 * 1.2) / 8, 9);
  });

  it('are what least squares make of growth and the prior', () => {
    // Σ (measured − f E)² ÷ (s² + (c E)²) + (f − 1)² × n ÷ c², which is least at f.
    const near = fc.record({
      expectedKgPerHa: fc.double({ min: 0, max: 1500, noNaN: true }),
      of: fc.double({ min: 0.5, max: 1.8, noNaN: true }),
    });
    const { readingErrorKgPerHa: s, growthSpread: c, priorReadings: n } = weight;
    fc.assert(
      fc.property(fc.array(near, { maxLength: 20 }), (given) => {
        const read = given.map(({ expectedKgPerHa, of }) => ({
          expectedKgPerHa,
          measuredKgPerHa: of * expectedKgPerHa,
        }));
        const off = (f: number): number =>
          read.reduce(
            (sum, { measuredKgPerHa: m, expectedKgPerHa: e }) =>
              sum + (m - f * e) ** 2 / (s ** 2 + (c * e) ** 2),
            ((f - 1) ** 2 * n) / c ** 2,
          );
        const { factor } = one(read);
        expect(off(factor)).toBeLessThanOrEqual(off(factor + 0.001));
        expect(off(factor)).toBeLessThanOrEqual(off(factor - 0.001));
      }),
    );
  });

  it('move by one wild reading by no more than a fifth', () => {
    fc.assert(
      fc.property(ratio, (wild) => {
        const { factor } = one(pairs(1, wild, 800));
        expect(factor).toBeGreaterThan(0.8);
        expect(factor).toBeLessThan(1.2);
      }),
    );
  });

  it('draw nearer to what agreeing readings say with each of them', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.45, max: 1.9, noNaN: true }), (says) => {
        const off = (count: number): number => Math.abs(one(pairs(count, says)).factor - says);
        for (let count = 0; count < 40; count++)
          expect(off(count + 1)).toBeLessThanOrEqual(off(count) + 1e-12);
        expect(off(400)).toBeLessThan(0.01);
      }),
      { numRuns: 30 },
    );
  });

  it('stay between their bounds whatever is read', () => {
    fc.assert(
      fc.property(fc.array(somePairs, { maxLength: 5 }), (given) => {
        const { farm, groups } = growthFactors(weight, given);
        for (const factor of [farm, ...groups.map((each) => each.factor)]) {
          expect(factor).toBeGreaterThanOrEqual(weight.lowFactor);
          expect(factor).toBeLessThanOrEqual(weight.highFactor);
        }
      }),
    );
  });

  it('do not care about the order of readings', () => {
    fc.assert(
      fc.property(somePairs, (given) => {
        const [there, back] = [one(given), one([...given].reverse())];
        expect(Math.abs(back.factor / there.factor - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  it('rise where much grew when hardly any was expected, and hardly fall where little did', () => {
    // 500 counts as 410, the most that doubled growth and a misreading come to. By hand:
    // (4 + 40 × 20 × 410 ÷ (20² + 740²)) ÷ (4 + 40 × 20² ÷ (20² + 740²)).
    expect(one(pairs(40, 500 / 20, 20)).factor).toBeCloseTo(1.1412, 3);
    expect(one(pairs(40, 0, 20)).factor).toBeGreaterThan(0.99);
  });

  it('tell kinds of paddock apart, and give one without readings half of what the others say', () => {
    const { farm, groups } = growthFactors(weight, [pairs(8, 1.5), pairs(8, 0.5), []]);
    // Each kind's readings count for 8 × 8 ÷ 16 of the farm's: (8 + 4 × 1.5 + 4 × 0.5) ÷ 16.
    expect(farm).toBeCloseTo(1, 9);
    expect(groups.map(({ factor }) => factor)).toEqual([
      expect.closeTo((8 + 12) / 16, 6),
      expect.closeTo((8 + 4) / 16, 6),
      expect.closeTo(1, 6),
    ]);
    const other = growthFactors(weight, [pairs(400, 1.5), []]);
    expect(other.groups[0]!.factor).toBeGreaterThan(1.49);
    expect(other.groups[1]!.factor).toBeCloseTo(1.25, 2);
  });
});

describe('isGrowth', () => {
  it('leaves out a stand that fell by more than a height can be misread by', () => {
    expect(isGrowth(weight, { measuredKgPerHa: -300, expectedKgPerHa: 10 })).toBe(true);
    expect(isGrowth(weight, { measuredKgPerHa: -400, expectedKgPerHa: 10 })).toBe(false);
    expect(isGrowth(weight, { measuredKgPerHa: -300, expectedKgPerHa: 900 })).toBe(false);
  });
});
