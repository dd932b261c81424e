import { describe, expect, it } from '@jest/globals';
import { birdGrowth } from '../../../shared/poultry/growth.js';
import type { BirdSex } from '../../../shared/tables/bird-tables.js';
import { rowById } from '../../../shared/tables/tables.js';
import { tables } from '../../support/factories.js';

// Source: National Research Council, Nutrient Requirements of Poultry, 9th revised edition, 1994,
// table of body weight and feed of broilers by sex, diet of 3200 kcal ME/kg. FROM MEMORY: the printed
// page was not seen again; the weekly column remembered with it adds up to the cumulative one.
const ROWS: readonly (readonly [BirdSex, number, number, number, number])[] = [
  // sex, days, live weight g, feed of the week g, cumulative feed g
  ['male', 7, 152, 135, 135],
  ['male', 14, 376, 290, 425],
  ['male', 21, 686, 487, 912],
  ['male', 28, 1085, 704, 1616],
  ['male', 35, 1576, 960, 2576],
  ['male', 42, 2088, 1141, 3717],
  ['male', 49, 2590, 1281, 4998],
  ['male', 56, 3077, 1432, 6430],
  ['male', 63, 3551, 1577, 8007],
  ['female', 7, 144, 131, 131],
  ['female', 14, 344, 273, 404],
  ['female', 21, 617, 444, 848],
  ['female', 28, 965, 642, 1490],
  ['female', 35, 1344, 738, 2228],
  ['female', 42, 1741, 1001, 3229],
  ['female', 49, 2134, 1081, 4310],
  ['female', 56, 2506, 1165, 5475],
  ['female', 63, 2842, 1246, 6721],
];

const table = rowById(tables.growthTables, 'fast-1994');

describe('birdGrowth of the 1994 table', () => {
  it.each(ROWS)(
    'gives a %s of %d days %d g on %d g of feed in the week and %d g in all (from memory)',
    (sex, day, weightG, weekG, feedG) => {
      const growth = birdGrowth(table, sex);
      const feed = growth.cumulativeFeedKg;
      // Every remembered row is met; only the rounding of binary fractions is left.
      expect(growth.weightKg[day]! * 1000).toBeCloseTo(weightG, 6);
      expect(feed[day]! * 1000).toBeCloseTo(feedG, 6);
      expect((feed[day]! - feed[day - 7]!) * 1000).toBeCloseTo(weekG, 6);
    },
  );

  it('holds every remembered row and no other, the hatch row aside (from memory)', () => {
    expect(ROWS).toHaveLength(18); // 9 weeks, two sexes
    expect(table.male).toHaveLength(10);
    expect(table.female).toHaveLength(10);
    expect(table.mark).toBe('from-memory');
  });
});
