import { describe, expect, it } from '@jest/globals';
import { cattleWaterL } from '../../../shared/pasture/cattle-water.js';
import { rowById } from '../../../shared/tables/tables.js';
import { fToC, L_PER_US_GAL } from '../../../shared/units/convert.js';
import { lbToKg } from '../../support/conversions.js';
import { tables } from '../../support/factories.js';

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

  it('holds the printed columns of finishing cattle, by which heavier growing cattle rise', () => {
    const rowsOf = (id: string) => tables.cattleWater.classes[id]!;
    const at = (id: string, airF: number): number =>
      rowsOf(id).find(({ airC }) => Math.abs(airC - fToC(airF)) < 0.01)!.liters / L_PER_US_GAL;
    for (const [id, july, january] of [
      ['finishing-800', 17.5, 7],
      ['finishing-1000', 20.5, 8.5],
      ['finishing-1200', 23, 9.5],
    ] as const) {
      expect(Math.abs(at(id, 90) - july)).toBeLessThan(OFF);
      expect(Math.abs(at(id, 36) - january)).toBeLessThan(OFF);
      expect(rowsOf(id)).toHaveLength(11);
    }
  });

  // Beef Magazine, "Watch summer water", retrieved.
  it.each([
    ['nursing-cow', 16.3, 17.9, 21.6],
    ['dry-cow', 10.8, 12.4, 17.6],
    ['bull', 12.7, 14.6, 19.5],
    ['growing-500', 6.5, 7.4, 10.6],
    ['growing-800', 9.3, 10.6, 14],
  ])('holds the hot-weather chart for %s: %d, %d and %d gal', (id, ...printed) => {
    const rows = tables.cattleWater.hot.classes[id]!;
    expect(rows.map(({ airC }) => Math.round(1.8 * airC + 32))).toEqual([70, 80, 90]);
    rows.forEach(({ liters }, k) =>
      expect(Math.abs(liters / L_PER_US_GAL - printed[k]!)).toBeLessThan(OFF),
    );
  });
});
