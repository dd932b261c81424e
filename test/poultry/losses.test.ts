import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { orderChances, survivingShare } from '../../shared/poultry/losses.js';

const rates = fc.record({
  firstWeekShare: fc.double({ min: 0, max: 0.9, noNaN: true }),
  laterShare: fc.double({ min: 0, max: 0.9, noNaN: true }),
  laterToDay: fc.integer({ min: 8, max: 200 }),
  layYearShare: fc.double({ min: 0, max: 0.5, noNaN: true }),
});

describe('survivingShare', () => {
  it('starts at 1 and never rises', () => {
    fc.assert(
      fc.property(rates, (given) => {
        const alive = Array.from({ length: 561 }, (_, day) => survivingShare(given, day));
        expect(alive[0]).toBe(1);
        expect(
          alive.findIndex((now, day) => !(0 <= now && now <= (alive[day - 1] ?? 1) + 1e-12)),
        ).toBe(-1);
      }),
      { numRuns: 100 },
    );
  });

  it('has lost the first-week share after seven days and both shares at the end', () => {
    const given = { firstWeekShare: 0.02, laterShare: 0.03, laterToDay: 56, layYearShare: 0 };
    expect(survivingShare(given, 7)).toBeCloseTo(0.98, 12);
    expect(survivingShare(given, 56)).toBeCloseTo(0.98 * 0.97, 12);
  });

  it('loses the laying-year share in the year after', () => {
    const given = { firstWeekShare: 0, laterShare: 0, laterToDay: 126, layYearShare: 0.05 };
    expect(survivingShare(given, 126 + 365)).toBeCloseTo(0.95, 12);
  });
});

describe('birdsToOrder', () => {
  const odds = fc.record({
    wanted: fc.integer({ min: 1, max: 5000 }),
    survivingShare: fc.double({ min: 0.3, max: 1, noNaN: true }),
    sexShare: fc.constantFrom(0.5, 0.95, 1),
    togetherness: fc.constantFrom(0, 0.02, 0.1),
  });

  it('is enough with the chance asked for, and one fewer is not', () => {
    fc.assert(
      fc.property(odds, fc.constantFrom(0.5, 0.8, 0.9), (of, chance) => {
        const order = orderChances(of).toOrder(chance);
        expect(orderChances(of).enough(order)).toBeGreaterThanOrEqual(chance - 1e-6);
        if (of.wanted < order) expect(orderChances(of).enough(order - 1)).toBeLessThan(chance);
      }),
      { numRuns: 60 },
    );
  });

  it('is the number wanted where nothing is lost', () => {
    const none = { wanted: 11, survivingShare: 1, sexShare: 1, togetherness: 0.02 };
    expect(orderChances(none).toOrder(0.9)).toBe(11);
    expect(orderChances(none).enough(11)).toBe(1);
  });
});

describe('losses past the table', () => {
  it('go on for birds that are kept longer, at the same rate', () => {
    const given = { firstWeekShare: 0, laterShare: 0.1, laterToDay: 57, layYearShare: 0 };
    expect(survivingShare(given, 107)).toBeCloseTo(0.9 ** 2, 12);
  });
});
