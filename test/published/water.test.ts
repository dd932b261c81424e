import { describe, expect, it } from '@jest/globals';
import { birdGrowth } from '../../shared/poultry/growth.js';
import { waterByAgeL, waterHeatFactor } from '../../shared/poultry/water.js';
import { rowById } from '../../shared/tables/tables.js';
import { L_PER_US_GAL } from '../../shared/units/convert.js';
import { tables } from '../support/factories.js';

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

  it('gives 25 meat birds in week 6 8.25 L a day (second-hand)', () => {
    const liters = (25 * midWeekML(6)) / 1000;
    expect(25 * 0.33).toBeCloseTo(8.25, 9);
    expect(Math.abs(liters - 8.25)).toBeLessThanOrEqual(0.1);
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

  it('stays at 1.5 to 2 times the feed by weight in weeks 3 to 8 (rule in the same table)', () => {
    // In weeks 1 and 2 the table gives more: 2.9 and 2.5 times the feed of the 2020 trial, since the
    // water table is of birds that grew and ate otherwise. Said aloud, not tuned.
    const table = rowById(tables.growthTables, 'fast-2020');
    const [male, female] = [birdGrowth(table, 'male'), birdGrowth(table, 'female')];
    for (let week = 3; week <= 8; week++) {
      const fed = (growth: typeof male): number =>
        growth.cumulativeFeedKg[7 * week]! - growth.cumulativeFeedKg[7 * week - 7]!;
      const ratio = midWeekML(week) / 1000 / ((fed(male) + fed(female)) / 14);
      expect(ratio).toBeGreaterThanOrEqual(1.5);
      expect(ratio).toBeLessThanOrEqual(2);
    }
  });
});

describe('waterHeatFactor', () => {
  const heat = tables.water.heat;

  it('raises 8.25 L to between 10.7 and 12.4 L above 32 °C, 30 to 50 % more (second-hand)', () => {
    expect(8.25 * waterHeatFactor(heat, 32)).toBeGreaterThanOrEqual(10.7);
    expect(8.25 * waterHeatFactor(heat, 32)).toBeLessThanOrEqual(12.4);
    expect(8.25 * waterHeatFactor(heat, 32, heat.riseLow)).toBeCloseTo(10.725, 6); // + 30 %
  });

  it('doubles at the high end, from 250 to 500 ml at 32 °C (Kentucky manual, Table 12.1)', () => {
    // 6.6 and 13.21 US gallons for 100 birds a day.
    expect(Math.abs((13.21 * L_PER_US_GAL * 1000) / 100 - 500)).toBeLessThan(1);
    expect(Math.abs((6.6 * L_PER_US_GAL * 1000) / 100 - 250)).toBeLessThan(1);
    expect(250 * waterHeatFactor(heat, 32, heat.riseHigh)).toBeCloseTo(500, 6);
  });

  it('leaves water alone up to 21 °C (second-hand)', () => {
    expect(waterHeatFactor(heat, 21)).toBe(1);
    expect(waterHeatFactor(heat, -10)).toBe(1);
  });
});
