import { describe, expect, it } from '@jest/globals';
import { waterByAgeL } from '../../../shared/poultry/water.js';
import { tables } from '../../support/factories.js';

const meat = waterByAgeL(tables.water.meat);
const hens = waterByAgeL(tables.water.layers);
/** The middle of week w is day 7w − 3.5: between two whole days. */
const midWeekML = (week: number): number => 500 * (meat[7 * week - 4]! + meat[7 * week - 3]!);

describe('waterByAgeL', () => {
  // Australian poultry research table, as reproduced (second-hand): ml a bird and day at 20 °C.
  it.each([
    [1, 65],
    [2, 120],
    [3, 180],
    [4, 245],
    [5, 290],
    [6, 330],
    [7, 355],
    [8, 370],
  ])('gives a meat bird in week %d %d ml a day at 20 °C (second-hand)', (week, mL) => {
    // The middle is read between two days, in week 1 one of them already rising: 3 %.
    expect(Math.abs(midWeekML(week) / mL - 1)).toBeLessThan(0.03);
  });

  it.each([
    [4, 100],
    [12, 160],
    [18, 200],
  ])('gives a pullet of %d weeks %d ml a day at 21 °C (second-hand)', (weeks, mL) => {
    expect(hens[7 * weeks]! * 1000).toBeCloseTo(mL, 6);
  });

  it('gives a hen in full lay 270 ml a day at 21 °C (second-hand)', () => {
    expect(hens[200]! * 1000).toBeCloseTo(270, 6);
  });
});
