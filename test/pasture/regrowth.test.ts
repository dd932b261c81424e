import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { ratePerDayOfMean, regrown } from '../../shared/pasture/regrowth.js';
import { HA_PER_ACRE, KG_PER_LB } from '../../shared/units/convert.js';

const KG_HA_PER_LB_ACRE = KG_PER_LB / HA_PER_ACRE;

// Penn State Agronomy Guide, Table 1.8-8, retrieved: acres to feed one animal unit in each month, and the
// yearly yield. Two cells break the pattern of their row and sum; the values that fit are taken: bluegrass
// low, September 4.5 for 1.5; tall grass high, June 0.6 for 0.9. A cell of 0.3 or 0.4 acres carries up to
// 17 % of rounding, so the sums of the highest rows differ from the listed yields by more.

describe('logistic regrowth (the equation and its ceiling from memory)', () => {
  const ceiling = 6000 * KG_HA_PER_LB_ACRE;
  it('grows fastest at half of the ceiling, by the peak of 150 lb that was measured (Brougham 1955)', () => {
    const rate = (4 * 150 * KG_HA_PER_LB_ACRE) / ceiling;
    const growth = (mass: number): number => (regrown(mass, rate * 1e-4, ceiling) - mass) / 1e-4;
    expect(growth(ceiling / 2) / KG_HA_PER_LB_ACRE).toBeCloseTo(150, 2);
    expect(growth(0.4 * ceiling)).toBeLessThan(growth(ceiling / 2));
    expect(growth(0.6 * ceiling)).toBeLessThan(growth(ceiling / 2));
  });

  it('grows from one mass to another at the mean it was given', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 0.5, noNaN: true }),
        fc.double({ min: 0.05, max: 0.45, noNaN: true }),
        fc.double({ min: 1, max: 150, noNaN: true }),
        (low, more, mean) => {
          const [from, to] = [low * ceiling, (low + more) * ceiling];
          const rate = ratePerDayOfMean(mean, from, to, ceiling);
          const days = (to - from) / mean;
          expect(Math.abs(regrown(from, rate * days, ceiling) / to - 1)).toBeLessThan(1e-9);
        },
      ),
    );
  });

  it('neither grows from nothing nor above the ceiling', () => {
    expect(regrown(0, 5, ceiling)).toBe(0);
    expect(regrown(ceiling, 5, ceiling)).toBe(ceiling);
    expect(regrown(1.2 * ceiling, 5, ceiling)).toBe(1.2 * ceiling);
    expect(regrown(100, 1000, ceiling)).toBeLessThanOrEqual(ceiling);
  });
});
