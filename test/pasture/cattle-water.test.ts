import { describe, expect, it } from '@jest/globals';
import { cattleWaterL, tankL } from '../../shared/pasture/cattle-water.js';
import { rowById } from '../../shared/tables/tables.js';
import { fToC, L_PER_US_GAL } from '../../shared/units/convert.js';
import { lbToKg } from '../support/conversions.js';
import { tables } from '../support/factories.js';

const gallons = (classId: string, airF: number, weightLb = 1200): number =>
  cattleWaterL(tables.cattleWater, rowById(tables.cattle.classes, classId), {
    maxC: fToC(airF),
    minC: fToC(airF),
    weightKg: lbToKg(weightLb),
    dryMatterKg: 0,
    milkKg: 0,
  }) / L_PER_US_GAL;

/** Liters and °C are stored to four digits; weights between 181.4 and 362.9 kg to one decimal. */
const OFF = 0.012;

// Michigan State University Extension, "Estimating Water Usage on Michigan Beef Farms" (table by P. Guyer,
// University of Nebraska), retrieved: gallons a head and day at the mean temperature of each month.

describe('cattleWaterL', () => {
  // Beef Magazine, "Watch summer water" (chart compiled from NRC 1996 and Winchester and Morris 1956),
  // retrieved: a cow in milk drinks 21.6 gal at 90 °F, where the other table falls to 16.5.
  it('gives a nursing cow the larger of two tables on a hot day: 21.6 gal at 90 °F (Beef Magazine)', () => {
    expect(Math.abs(gallons('cow-calf', 90) - 21.6)).toBeLessThan(OFF);
    expect(gallons('cow-calf', 88)).toBeGreaterThan(17.5);
    for (let airF = 37; airF < 90; airF++)
      expect(gallons('cow-calf', airF + 1)).toBeGreaterThanOrEqual(
        gallons('cow-calf', airF) - 1e-9,
      );
  });

  it('lies between the printed weights in between, and goes on beyond them', () => {
    expect(gallons('stocker', 73, 500)).toBeCloseTo(7, 1);
    expect(gallons('stocker', 73, 300)).toBeCloseTo(gallons('stocker', 73, 400), 2);
    expect(gallons('dry-cow', 10)).toBe(gallons('dry-cow', 36));
    // Cattle on grain are printed up to 1,200 lb, with more than growing ones of their weight.
    expect(gallons('stocker', 90, 1000)).toBeGreaterThan(16);
    expect(gallons('stocker', 90, 1000)).toBeLessThan(20.5);
    expect(gallons('stocker', 90, 1200)).toBeLessThan(23);
    // From 78 to 90 °F a dry cow's water rises by 4.5 gal; from 90 to 102 °F by as much again.
    expect(gallons('dry-cow', 102)).toBeCloseTo(14.5 + 4.5, 1);
  });

  const milkCowL = (dryMatterKg: number, milkKg: number, minC: number): number =>
    cattleWaterL(tables.cattleWater, rowById(tables.cattle.classes, 'milk-cow'), {
      maxC: minC + 12,
      minC,
      weightKg: 600,
      dryMatterKg,
      milkKg,
    });

  it('gives a milk cow 72.3 L at 15 kg of feed, 15 kg of milk and 15 °C at night (Murphy, from memory)', () => {
    // 15.99 + 1.58·15 + 0.90·15 + 0.05·(1.5·15) + 1.20·15 = 72.315, by hand
    expect(milkCowL(15, 15, 15)).toBeCloseTo(72.315, 3);
  });
});

describe('tankL', () => {
  // USDA-NRCS, "Livestock Watering Data Sheet", retrieved: 2 gal an animal for a refill of an hour, a quarter
  // of the day's need for four hours, all of it for longer, twice for a supply that cannot be relied on.
  const herd = { head: 50, litersPerDay: 2000 };
  it.each([
    ['an hour', 1, 50 * 2 * L_PER_US_GAL],
    ['half an hour', 0.5, 50 * 2 * L_PER_US_GAL],
    ['four hours', 4, 500],
    ['two hours', 2, 500],
    ['six hours', 6, 2000],
    ['a day or more', 24, 4000],
    ['two days', 48, 4000],
  ])(
    'for a refill of %s, %d h, is %d L for 50 head and 2,000 L a day (NRCS)',
    (_, refillH, liters) => {
      expect(Math.abs(tankL(tables.cattleWater, { ...herd, refillH }) / liters - 1)).toBeLessThan(
        1e-4,
      );
    },
  );
});
