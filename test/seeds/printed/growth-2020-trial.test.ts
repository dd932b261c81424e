import { describe, expect, it } from '@jest/globals';
import { birdGrowth } from '../../../shared/poultry/growth.js';
import { rowById } from '../../../shared/tables/tables.js';
import { tables } from '../../support/factories.js';

// Source of the line: Poultry Science 99(6), 2020, pages 3266-3279, control diet, mean of five
// fast-growing strains: weights of Table 2, feed of Table 3 added up over its periods. The tables do
// not say the sex of the birds.
const table = rowById(tables.growthTables, 'fast-2020');
const male = birdGrowth(table, 'male');
const female = birdGrowth(table, 'female');
const weightG = (day: number): number => 500 * (male.weightKg[day]! + female.weightKg[day]!);
const feedG = (day: number): number =>
  500 * (male.cumulativeFeedKg[day]! + female.cumulativeFeedKg[day]!);

const ROWS = [
  // days, live weight g, cumulative feed g
  [0, 40.1, 0],
  [14, 430, 512],
  [28, 1529, 2102],
  [41, 2823, 4427],
  [55, 4043, 7291],
] as const;

describe('birdGrowth of the 2020 trial', () => {
  it.each(ROWS)('gives %d days %d g on %d g of feed, mean of both sexes', (day, grams, feed) => {
    expect(weightG(day)).toBeCloseTo(grams, 6); // every printed row is met
    expect(feedG(day)).toBeCloseTo(feed, 6);
  });

  it('holds every printed row and no other', () => {
    expect(ROWS).toHaveLength(5);
    expect(table.asHatched).toHaveLength(5);
  });

  it.each([
    [0, 14, 512],
    [14, 28, 1590],
    [28, 41, 2325],
    [41, 55, 2864],
  ])('feeds day %d to %d %d g (2020, Table 3)', (from, to, grams) => {
    expect(feedG(to) - feedG(from)).toBeCloseTo(grams, 6);
  });

  it('feeds 7291 g to 55 days, the sum of the four printed periods', () => {
    expect(512 + 1590 + 2325 + 2864).toBe(7291);
    expect(feedG(55)).toBeCloseTo(7291, 6);
  });

  it.each([
    ['heaviest', 4183, 7645],
    ['lightest', 3705, 6805],
  ])(
    'lies within 10 %% of the %s strain of the trial at 55 days, %d g on %d g',
    (_, grams, feed) => {
      // Strains are printed as the mean of two diets, so the control line may lie nearer the heavy one.
      expect(Math.abs(weightG(55) / grams - 1)).toBeLessThan(0.1);
      expect(Math.abs(feedG(55) / feed - 1)).toBeLessThan(0.1);
    },
  );
});
