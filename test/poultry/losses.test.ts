import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { birdsToOrder, survivingShare } from '../../shared/poultry/losses.js';

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
        expect(survivingShare(given, 0)).toBe(1);
        let before = 1;
        for (let day = 1; day <= 560; day++) {
          const now = survivingShare(given, day);
          expect(now).toBeLessThanOrEqual(before + 1e-12);
          expect(now).toBeGreaterThanOrEqual(0);
          before = now;
        }
      }),
      { numRuns: 100 },
    );
  });

  it('has lost the first-week share after seven days and both shares at the end', () => {
    const given = { firstWeekShare: 0.02, laterShare: 0.03, laterToDay: 56, layYearShare: 0 };
    expect(survivingShare(given, 7)).toBeCloseTo(0.98, 12);
    expect(survivingShare(given, 56)).toBeCloseTo(0.98 * 0.97, 12);
    expect(survivingShare(given, 90)).toBeCloseTo(0.98 * 0.97, 12); // nothing is lost after
  });

  it('loses the laying-year share in the year after', () => {
    const given = { firstWeekShare: 0, laterShare: 0, laterToDay: 126, layYearShare: 0.05 };
    expect(survivingShare(given, 126 + 365)).toBeCloseTo(0.95, 12);
  });
});

describe('birdsToOrder', () => {
  it('leaves at least the birds wanted, and one fewer would not', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5000 }),
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        fc.constantFrom(0.5, 1),
        (wanted, share, sex) => {
          const order = birdsToOrder({ wanted, survivingShare: share, wantedSexShare: sex });
          expect(order * share * sex).toBeGreaterThanOrEqual(wanted - 1e-6);
          expect((order - 1) * share * sex).toBeLessThan(wanted);
        },
      ),
    );
  });

  it('does not order one more when the answer is whole', () => {
    expect(birdsToOrder({ wanted: 75, survivingShare: 0.75, wantedSexShare: 1 })).toBe(100);
    expect(birdsToOrder({ wanted: 10, survivingShare: 1, wantedSexShare: 0.5 })).toBe(20);
    expect(birdsToOrder({ wanted: 1, survivingShare: 1, wantedSexShare: 1 })).toBe(1);
  });
});
