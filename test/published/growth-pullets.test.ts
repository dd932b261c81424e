import { describe, expect, it } from '@jest/globals';
import { birdGrowth } from '../../shared/poultry/growth.js';
import { rowById } from '../../shared/tables/tables.js';
import { kgToLb, lbToKg } from '../support/conversions.js';
import { tables } from '../support/factories.js';

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

  // Source: Poultry Science, 2020, layer trial, Table 3, control column: white-egg hens by period.
  it.each([
    [22, 1483.0],
    [26, 1611.3],
    [32, 1635.0],
    [38, 1655.0],
  ])(
    'carries a white-egg hen on to %d weeks within 2 %% of the trial, %d g (2020)',
    (weeks, grams) => {
      // Periods of three weeks are printed; the curve holds them at one age each.
      expect(Math.abs((white.weightKg[7 * weeks]! * 1000) / grams - 1)).toBeLessThan(0.02);
    },
  );

  it('makes a white-egg pullet of 16 weeks 5 % heavier than the trial, 1160 g (2020)', () => {
    expect(Math.abs(1.22 / 1.1603 - 1)).toBeLessThan(0.055);
    expect(Math.abs(white.weightKg[112]! / 1.1603 - 1)).toBeLessThan(0.055);
  });

  // The brown line is looser: published pullets of other stock lie on both sides of it.
  it.each([
    [16, 1640, 'full fed, 1985'],
    [20, 1520, 'restricted feeding, 1985'],
    [19, 1320, 'a dual line'],
    [20, 1650, 'a parent line'],
  ])('comes within 20 %% of a brown-egg pullet of %d weeks, %d g (%s)', (weeks, grams) => {
    expect(Math.abs((brown.weightKg[7 * weeks]! * 1000) / grams - 1)).toBeLessThan(0.2);
  });

  it('feeds a pullet to 20 weeks within 12 % of an extension budget of 17.1 lb', () => {
    // 2 lb to week 6, 11 lb in weeks 7 to 16, 14.7 lb a day per 100 birds for the last 28 days.
    const budgetLb = 2 + 11 + (14.7 * 28) / 100;
    expect(Math.abs(budgetLb - 17.1)).toBeLessThan(0.1);
    expect(Math.abs(kgToLb(white.cumulativeFeedKg[140]!) / 17.1 - 1)).toBeLessThan(0.12);
    expect(Math.abs(kgToLb(brown.cumulativeFeedKg[140]!) / 17.1 - 1)).toBeLessThan(0.05);
  });

  it('feeds more than the 2 lb that the same budget gives the first six weeks (disagreement, said aloud)', () => {
    // 907 g against 1190 and 1300 g: another keeper's note gives 4.3 kg to 10 weeks, the other way.
    expect(white.cumulativeFeedKg[42]!).toBeGreaterThan(lbToKg(2));
    expect(brown.cumulativeFeedKg[42]!).toBeLessThan(1.5 * lbToKg(2));
  });
});
