import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { coldEnergyKcal, lowerCriticalC } from '../../shared/poultry/cold-feed.js';
import { tables } from '../support/factories.js';

const row = tables.nights.coldFeed;
const weight = fc.double({ min: row.fromKg, max: row.toKg, noNaN: true });

describe('what cold costs a bird', () => {
  it('begins at a lower temperature the heavier the bird, between its two ends', () => {
    fc.assert(
      fc.property(weight, weight, (a, b) => {
        const [light, heavy] = [Math.min(a, b), Math.max(a, b)];
        expect(lowerCriticalC(row, heavy)).toBeLessThanOrEqual(lowerCriticalC(row, light));
        expect(lowerCriticalC(row, heavy)).toBeGreaterThan(row.criticalBaseC);
        expect(lowerCriticalC(row, light)).toBeLessThan(row.criticalBaseC + row.criticalRiseC);
      }),
    );
  });

  // Worked from the published equation by hand: CT at 0.2, 1 and 2.5 kg, and ten degrees of a day
  // at 2.5 kg, 228.92 − 176.23 kcal.
  it.each([
    [0.2, 34.58],
    [1, 30.65],
    [2.5, 26.38],
  ])('of %d kg begins at %d °C', (weightKg, celsius) => {
    expect(Math.abs(lowerCriticalC(row, weightKg) - celsius)).toBeLessThan(0.006);
  });

  it('is 52.69 kcal for ten degrees of a day at 2.5 kg', () => {
    const kcal = coldEnergyKcal(row, { weightKg: 2.5, degrees: 10, hours: 24 });
    expect(Math.abs(kcal - 52.69)).toBeLessThan(0.02);
  });

  it('is twice as much for twice the degrees or hours, and nothing for none', () => {
    fc.assert(
      fc.property(weight, fc.integer({ min: 0, max: 20 }), (weightKg, degrees) => {
        const one = coldEnergyKcal(row, { weightKg, degrees, hours: 10 });
        expect(coldEnergyKcal(row, { weightKg, degrees: 2 * degrees, hours: 10 })).toBeCloseTo(
          2 * one,
        );
        expect(coldEnergyKcal(row, { weightKg, degrees, hours: 20 })).toBeCloseTo(2 * one);
        expect(coldEnergyKcal(row, { weightKg, degrees: 0, hours: 10 })).toBe(0);
      }),
    );
  });
});
