import { describe, expect, it } from '@jest/globals';
import { lifeOf } from '../../../shared/plan/life.js';
import { birdGrowth } from '../../../shared/poultry/growth.js';
import type { BirdSex } from '../../../shared/tables/bird-tables.js';
import { rowById } from '../../../shared/tables/tables.js';
import { newBatch, tables } from '../../support/factories.js';

// Source: National Research Council, Nutrient Requirements of Poultry, 8th revised edition, 1984,
// table of body weight and feed of broilers by sex, diet of 3200 kcal ME/kg. Read in a reproduction,
// where the weekly feed of females in week 4 is misprinted as 355; its own cumulative column gives 500.
const ROWS: readonly (readonly [BirdSex, number, number, number])[] = [
  // sex, days, live weight g, cumulative feed g
  ['male', 7, 130, 120],
  ['male', 14, 320, 380],
  ['male', 21, 560, 770],
  ['male', 28, 860, 1305],
  ['male', 35, 1250, 2045],
  ['male', 42, 1690, 3025],
  ['male', 49, 2100, 4120],
  ['male', 56, 2520, 5330],
  ['male', 63, 2925, 6650],
  ['female', 7, 120, 110],
  ['female', 14, 300, 350],
  ['female', 21, 515, 705],
  ['female', 28, 790, 1205],
  ['female', 35, 1110, 1850],
  ['female', 42, 1430, 2650],
  ['female', 49, 1745, 3560],
  ['female', 56, 2060, 4530],
  ['female', 63, 2350, 5540],
];

const table = rowById(tables.growthTables, 'fast-1984');

describe('birdGrowth of the 1984 table', () => {
  it.each(ROWS)('gives a %s of %d days %d g on %d g of feed (1984)', (sex, day, weightG, feedG) => {
    const growth = birdGrowth(table, sex);
    // The curve goes through every printed row: nothing but rounding of a binary fraction is left.
    expect(growth.weightKg[day]! * 1000).toBeCloseTo(weightG, 6);
    expect(growth.cumulativeFeedKg[day]! * 1000).toBeCloseTo(feedG, 6);
  });

  it('holds every printed row and no other, the hatch row aside', () => {
    expect(ROWS).toHaveLength(18); // 9 weeks, two sexes
    expect(table.male).toHaveLength(10);
    expect(table.female).toHaveLength(10);
  });

  it('adds six printed weeks of male feed up to 3025 g', () => {
    const weekly = [120, 260, 390, 535, 740, 980]; // printed weekly column, 1984
    expect(weekly.reduce((a, b) => a + b, 0)).toBe(3025);
    expect(weeklyFeedG('male', 6)).toEqual(weekly);
  });

  it('adds nine printed weeks of female feed up to 5540 g, week 4 corrected to 500 g', () => {
    const weekly = [110, 240, 355, 500, 645, 800, 910, 970, 1010]; // printed, misprint corrected
    expect(weekly.reduce((a, b) => a + b, 0)).toBe(5540);
    expect(weeklyFeedG('female', 9)).toEqual(weekly);
  });
});

describe('lifeOf', () => {
  it('makes a straight run of 1984 birds weigh 1560 g at 42 days on 2837.5 g of feed', () => {
    // (1690 + 1430) ÷ 2 and (3025 + 2650) ÷ 2, from the same table.
    const life = lifeOf(
      newBatch({
        growthTableId: 'fast-1984',
        weightFactor: 1,
        feedFactor: 1,
        wastePercent: 0,
        firstWeekLossPercent: 0,
        laterLossPercent: 0,
        hatchToArrivalDays: 0,
        leaveAgeDays: 42,
        orderedBirds: 100,
      }),
      tables,
    );
    expect(life.meanWeightKg[42]).toBeCloseTo(1.56, 6);
    const feedKg = life.flockFeedKg.reduce((a, b) => a + b, 0) / 100;
    expect(feedKg).toBeCloseTo(2.8375, 6);
  });
});

function weeklyFeedG(sex: BirdSex, weeks: number): number[] {
  const feed = birdGrowth(table, sex).cumulativeFeedKg;
  return Array.from({ length: weeks }, (_, k) =>
    Math.round((feed[7 * k + 7]! - feed[7 * k]!) * 1000),
  );
}
