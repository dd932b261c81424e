import { describe, expect, it } from '@jest/globals';
import { birdGrowth } from '../../../shared/poultry/growth.js';
import { rowById } from '../../../shared/tables/tables.js';
import { tables } from '../../support/factories.js';

// Source: National Research Council, Nutrient Requirements of Poultry, 1994, growing pullets. FROM
// MEMORY: the printed page was not seen again. Weight at the age, and feed listed for that week.
type Row = readonly [weeks: number, weightG: number, feedG: number];
const WHITE: readonly Row[] = [
  // weeks, weight g, feed listed g a week
  [0, 35, 50],
  [2, 100, 140],
  [4, 260, 260],
  [6, 450, 340],
  [8, 660, 360],
  [10, 750, 380],
  [12, 980, 400],
  [14, 1100, 420],
  [16, 1220, 430],
  [18, 1375, 450],
  [20, 1475, 500],
];
const BROWN: readonly Row[] = [
  [0, 37, 70],
  [2, 120, 160],
  [4, 325, 280],
  [6, 500, 350],
  [8, 750, 380],
  [10, 900, 400],
  [12, 1100, 420],
  [14, 1240, 450],
  [16, 1380, 470],
  [18, 1500, 500],
  [20, 1600, 550],
];

const white = birdGrowth(rowById(tables.growthTables, 'white-pullet-1994'), 'female');
const brown = birdGrowth(rowById(tables.growthTables, 'brown-pullet-1994'), 'female');

describe('birdGrowth of pullets', () => {
  it.each(WHITE)(
    'gives a white-egg pullet of %d weeks %d g (from memory; %d g feed that week)',
    (weeks, grams) => {
      expect(white.weightKg[7 * weeks]! * 1000).toBeCloseTo(grams, 6); // every row is met
    },
  );

  it.each(BROWN)(
    'gives a brown-egg pullet of %d weeks %d g (from memory; %d g feed that week)',
    (weeks, grams) => {
      expect(brown.weightKg[7 * weeks]! * 1000).toBeCloseTo(grams, 6);
    },
  );

  it('feeds two weeks the two weekly figures at their ends, for every fortnight (from memory)', () => {
    for (const [growth, rows] of [
      [white, WHITE],
      [brown, BROWN],
    ] as const) {
      for (let k = 1; k < rows.length; k++) {
        const [weeks, , feed] = rows[k]!;
        const step = growth.cumulativeFeedKg[7 * weeks]! - growth.cumulativeFeedKg[7 * weeks - 14]!;
        // Two weeks at the mean of the two listed figures: their sum.
        expect(step * 1000).toBeCloseTo(rows[k - 1]![2] + feed, 6);
      }
    }
  });
});
