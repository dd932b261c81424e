import { describe, expect, it } from '@jest/globals';
import { cattleWaterL, tankL } from '../../shared/pasture/cattle-water.js';
import { rowById } from '../../shared/tables/tables.js';
import { fToC, L_PER_US_GAL } from '../../shared/units/convert.js';
import { lbToKg } from '../support/conversions.js';
import { tables } from '../support/factories.js';
import { figures } from '../support/figures.js';

const gallons = (classId: string, airF: number, weightLb = 1200): number =>
  cattleWaterL(tables.cattleWater, rowById(tables.cattle.classes, classId), {
    airC: fToC(airF),
    minC: fToC(airF),
    weightKg: lbToKg(weightLb),
    dryMatterKg: 0,
    milkKg: 0,
  }) / L_PER_US_GAL;

/** Liters and °C are stored to four digits; weights between 181.4 and 362.9 kg to one decimal. */
const OFF = 0.012;

// Michigan State University Extension, "Estimating Water Usage on Michigan Beef Farms" (table by P. Guyer,
// University of Nebraska), retrieved: gallons a head and day at the mean temperature of each month.
const MONTHS: readonly (readonly [
  string,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
])[] = [
  // month, °F, nursing cow, dry cow, bull, growing 400, 600, 800 lb
  ['January', 36, 11.0, 6.0, 7.0, 3.5, 5.0, 6.0],
  ['February', 40, 11.5, 6.0, 8.0, 4.0, 5.5, 6.5],
  ['March', 50, 12.5, 6.5, 8.6, 4.5, 6.0, 7.0],
  ['April', 64, 15.5, 8.0, 10.5, 5.5, 7.0, 8.5],
  ['May', 73, 17.0, 9.0, 12.0, 6.0, 8.0, 9.5],
  ['June', 78, 17.5, 10.0, 13.0, 6.5, 8.5, 10.0],
  ['July', 90, 16.5, 14.5, 19.0, 9.5, 13.0, 15.0],
  ['August', 88, 16.5, 14.0, 18.0, 9.0, 12.0, 14.0],
  ['September', 78, 17.5, 10.0, 13.0, 6.5, 8.5, 10.0],
  ['October', 68, 16.5, 8.5, 11.5, 5.5, 7.5, 9.0],
  ['November', 52, 13.0, 6.5, 9.0, 4.5, 6.0, 7.0],
  ['December', 38, 11.0, 6.0, 7.5, 4.0, 5.0, 6.0],
];

describe('cattleWaterL', () => {
  it.each(MONTHS)('gives the printed gallons of %s, %d °F (Michigan, table)', (...row) => {
    const [, airF, nursing, dry, bull, light, middle, heavy] = row;
    if (airF < 80) expect(Math.abs(gallons('cow-calf', airF) - nursing)).toBeLessThan(OFF);
    expect(Math.abs(gallons('dry-cow', airF) - dry)).toBeLessThan(OFF);
    expect(Math.abs(gallons('bull', airF) - bull)).toBeLessThan(OFF);
    expect(Math.abs(gallons('stocker', airF, 400) - light)).toBeLessThan(OFF);
    expect(Math.abs(gallons('stocker', airF, 600) - middle)).toBeLessThan(OFF);
    expect(Math.abs(gallons('stocker', airF, 800) - heavy)).toBeLessThan(OFF);
  });

  it.each([
    ['dry-cow', 1200, 8.8],
    ['bull', 1200, 11.4],
    ['stocker', 400, 5.8],
    ['stocker', 600, 7.7],
    ['stocker', 800, 9.0],
  ])(
    'gives for %s of %d lb the printed mean of the year, %d gal (Michigan, table)',
    (id, lb, printed) => {
      const mean = MONTHS.reduce((sum, [, airF]) => sum + gallons(id, airF, lb), 0) / 12;
      expect(Math.abs(mean - printed)).toBeLessThanOrEqual(0.05 + OFF); // one decimal
    },
  );

  it('keeps the printed row of nursing cows, whose mean is 14.7 gal (Michigan, table)', () => {
    const rows = figures<{
      'nursing-cow': readonly { airC: number; liters: number }[];
    }>('nursing-cow-water.json')['nursing-cow'];
    const stored = (airF: number): number =>
      rows.find((row) => Math.abs(row.airC - fToC(airF)) < 0.01)!.liters / L_PER_US_GAL;
    for (const [, airF, nursing] of MONTHS)
      expect(Math.abs(stored(airF) - nursing)).toBeLessThan(OFF);
    const mean = MONTHS.reduce((sum, [, airF]) => sum + stored(airF), 0) / 12;
    expect(Math.abs(mean - 14.7)).toBeLessThanOrEqual(0.05 + OFF);
  });

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

  it.each([
    [70, 16.3, 0.04],
    [80, 17.9, 0.04],
  ])(
    'comes for a nursing cow at %d °F near %d gal of the other chart (Beef Magazine)',
    (...row) => {
      expect(Math.abs(gallons('cow-calf', row[0]) / row[1] - 1)).toBeLessThan(row[2]);
    },
  );

  // The two charts disagree: where one table is followed, the distance from the other is said aloud.
  it.each([
    ['dry-cow', 1200, 70, 10.8, -0.2],
    ['dry-cow', 1200, 90, 17.6, -0.18],
    ['bull', 1200, 70, 12.7, -0.08],
    ['bull', 1200, 90, 19.5, -0.03],
    ['stocker', 800, 70, 9.3, -0.01],
    ['stocker', 800, 90, 14.0, 0.07],
  ])('lies for %s of %d lb at %d °F off %d gal of the other chart by the share %d', (...row) => {
    const [id, lb, airF, other, share] = row;
    expect(Math.abs(gallons(id, airF, lb) / other - 1 - share)).toBeLessThan(0.015);
  });

  it('lies between the printed weights in between, and keeps the ends beyond', () => {
    expect(gallons('stocker', 73, 500)).toBeCloseTo(7, 1);
    expect(gallons('stocker', 73, 300)).toBeCloseTo(gallons('stocker', 73, 400), 2);
    expect(gallons('stocker', 73, 1000)).toBeCloseTo(gallons('stocker', 73, 800), 2);
    expect(gallons('dry-cow', 10)).toBe(gallons('dry-cow', 36));
    expect(gallons('dry-cow', 110)).toBe(gallons('dry-cow', 90));
  });

  const milkCowL = (dryMatterKg: number, milkKg: number, minC: number): number =>
    cattleWaterL(tables.cattleWater, rowById(tables.cattle.classes, 'milk-cow'), {
      airC: minC + 6,
      minC,
      weightKg: 600,
      dryMatterKg,
      milkKg,
    });

  it('gives a milk cow 72.3 L at 15 kg of feed, 15 kg of milk and 15 °C at night (Murphy, from memory)', () => {
    // 15.99 + 1.58·15 + 0.90·15 + 0.05·(1.5·15) + 1.20·15 = 72.315, by hand
    expect(milkCowL(15, 15, 15)).toBeCloseTo(72.315, 3);
  });

  it('comes near 24 gal of a Holstein at 70 lb of milk (Water for dairy animals, Penn State)', () => {
    // Feed and temperature are not printed: 22 kg and 10 °C are taken.
    expect(Math.abs(milkCowL(22, lbToKg(70), 10) / L_PER_US_GAL / 24 - 1)).toBeLessThan(0.05);
  });

  it('comes near 20 gal of heifers at 50 lb of milk, July to November (Don’t Overlook Water, NDSU)', () => {
    // Feed and temperature are not printed: 17 kg and 12 °C are taken.
    expect(Math.abs(milkCowL(17, lbToKg(50), 12) / L_PER_US_GAL / 20 - 1)).toBeLessThan(0.1);
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
