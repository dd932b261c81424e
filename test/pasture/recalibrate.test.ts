import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { growthFactor } from '../../shared/pasture/recalibrate.js';
import { tables } from '../support/factories.js';

const weight = tables.pasture.readingWeight;
const pairs = (count: number, ratio: number, expectedKgPerHa = 800) =>
  Array.from({ length: count }, () => ({
    measuredKgPerHa: ratio * expectedKgPerHa,
    expectedKgPerHa,
  }));
const ratio = fc.double({ min: 0.05, max: 8, noNaN: true });
const somePairs = fc.array(
  fc.record({
    measuredKgPerHa: fc.double({ min: 0, max: 4000, noNaN: true }),
    expectedKgPerHa: fc.double({ min: 0, max: 4000, noNaN: true }),
  }),
  { maxLength: 30 },
);

describe('growthFactor', () => {
  it('is 1 without readings', () => {
    expect(growthFactor(weight, [])).toEqual({ factor: 1, readings: 0 });
  });

  it('moves little by one reading: half the growth lowers it by 13 %', () => {
    // Four imagined readings agree with the table: 0.5^(1/5) = 0.871, by hand.
    const { factor, readings } = growthFactor(weight, pairs(1, 0.5));
    expect(factor).toBeCloseTo(0.8706, 4);
    expect(readings).toBe(1);
  });

  it('moves by one wild reading by no more than a fifth', () => {
    fc.assert(
      fc.property(ratio, (wild) => {
        const { factor } = growthFactor(weight, pairs(1, wild));
        expect(factor).toBeGreaterThan(0.8);
        expect(factor).toBeLessThan(1.2);
      }),
    );
  });

  it.each([
    [4, 0.7, 0.8367], // 0.7^(4/8)
    [12, 0.7, 0.7653],
    [100, 0.7, 0.7097],
    [100, 1.6, 1.5713],
  ])('comes after %d readings that say %d to %d', (count, says, factor) => {
    expect(growthFactor(weight, pairs(count, says)).factor).toBeCloseTo(factor, 4);
  });

  it('draws nearer to what agreeing readings say with each of them', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.45, max: 1.9, noNaN: true }), (says) => {
        const off = (count: number): number =>
          Math.abs(Math.log(growthFactor(weight, pairs(count, says)).factor / says));
        for (let count = 0; count < 40; count++)
          expect(off(count + 1)).toBeLessThanOrEqual(off(count) + 1e-12);
        expect(off(400)).toBeLessThan(0.01);
      }),
      { numRuns: 30 },
    );
  });

  it('stays between its bounds whatever is read, and counts no more than it was given', () => {
    fc.assert(
      fc.property(somePairs, (given) => {
        const { factor, readings } = growthFactor(weight, given);
        expect(factor).toBeGreaterThanOrEqual(weight.lowFactor);
        expect(factor).toBeLessThanOrEqual(weight.highFactor);
        expect(readings).toBeLessThanOrEqual(given.length);
      }),
    );
  });

  it('does not care about the order of readings', () => {
    fc.assert(
      fc.property(somePairs, (given) => {
        const there = growthFactor(weight, given);
        const back = growthFactor(weight, [...given].reverse());
        expect(back.readings).toBe(there.readings);
        expect(Math.abs(back.factor / there.factor - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  it('is undone by a reading as far off on the other side', () => {
    const both = [...pairs(1, 0.5), ...pairs(1, 2)];
    expect(growthFactor(weight, both).factor).toBeCloseTo(1, 9);
  });

  it('leaves out pairs with hardly any growth on either side', () => {
    const { factor, readings } = growthFactor(weight, [
      { measuredKgPerHa: 400, expectedKgPerHa: 39 },
      { measuredKgPerHa: 9, expectedKgPerHa: 400 },
    ]);
    expect({ factor, readings }).toEqual({ factor: 1, readings: 0 });
  });
});
