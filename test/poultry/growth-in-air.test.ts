import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { airFactors, bestAirC } from '../../shared/poultry/growth-in-air.js';
import { tables } from '../support/factories.js';

const { growing } = tables;
const anyAge = fc.integer({ min: 0, max: 200 });
const anyAir = fc.double({ min: -20, max: 45, noNaN: true });

describe('bestAirC', () => {
  it.each([
    [0, 34.5],
    [9, 30.6],
    [18, 26.7],
    [25, 23.35],
    [32, 20],
    [90, 20],
  ])('is at %d days %d °C', (age, airC) => {
    expect(bestAirC(growing.best, age)).toBeCloseTo(airC, 9);
  });
});

describe('airFactors', () => {
  it('leave birds alone in air that suits them, and a little below it', () => {
    expect(airFactors(growing, 1, 40, 20)).toEqual({ gain: 1, feed: 1 });
    expect(airFactors(growing, 1, 40, 17.5)).toEqual({ gain: 1, feed: 1 });
  });

  it('take less from slow birds', () => {
    const [fast, slow] = [airFactors(growing, 1, 40, 28), airFactors(growing, 0.5, 40, 28)];
    expect(1 - slow.gain).toBeCloseTo((1 - fast.gain) / 2, 9);
    expect(1 - slow.feed).toBeCloseTo((1 - fast.feed) / 2, 9);
  });

  it('ask for more feed in the cold, and take gain in hard cold only', () => {
    expect(airFactors(growing, 1, 40, 12)).toEqual({ gain: 1, feed: 1.05 });
    expect(airFactors(growing, 1, 40, 0).gain).toBeCloseTo(0.9, 9);
  });

  it('never make birds convert better than in the air that suits them', () => {
    fc.assert(
      fc.property(anyAge, anyAir, fc.double({ min: 0, max: 1, noNaN: true }), (age, air, share) => {
        const { gain, feed } = airFactors(growing, share, age, air);
        expect(gain).toBeGreaterThanOrEqual(growing.heat.least);
        expect(gain).toBeLessThanOrEqual(feed);
      }),
    );
  });

  it('go down without a jump as the air warms', () => {
    fc.assert(
      fc.property(anyAge, fc.double({ min: 20, max: 44, noNaN: true }), (age, air) => {
        const [now, warmer] = [
          airFactors(growing, 1, age, air),
          airFactors(growing, 1, age, air + 0.1),
        ];
        expect(warmer.feed).toBeLessThanOrEqual(now.feed);
        expect(now.gain - warmer.gain).toBeLessThan(0.012);
      }),
    );
  });
});
