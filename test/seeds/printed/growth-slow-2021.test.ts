import { describe, expect, it } from '@jest/globals';
import { birdGrowth } from '../../../shared/poultry/growth.js';
import { rowById } from '../../../shared/tables/tables.js';
import { tables } from '../../support/factories.js';

// Source: Korean Journal of Poultry Science 48(4), page 277, Table 2: gain and feed of slow-growing
// meat strains by fortnight. 40 g of hatch weight is added here: the table prints gains only.
const GAINS_G = {
  'slow-2021-heavy': [194.0, 388.6, 536.4, 435.9, 607.4, 388.0],
  'slow-2021-light': [140.4, 322.6, 255.7, 329.8, 329.6, 286.8],
};
const FEED_G = {
  'slow-2021-heavy': [338.2, 917.3, 1045, 1299, 1484, 1594],
  'slow-2021-light': [251.1, 793.2, 960.7, 1101, 1194, 945.5],
};
const ROWS = (['slow-2021-heavy', 'slow-2021-light'] as const).flatMap((id) =>
  GAINS_G[id].map((gain, k) => [id, 14 * k, 14 * (k + 1), gain, FEED_G[id][k]!] as const),
);

describe('birdGrowth of the 2021 slow-growing strains', () => {
  it('holds every printed fortnight of both strains', () => {
    expect(ROWS).toHaveLength(12);
    expect(rowById(tables.growthTables, 'slow-2021-heavy').asHatched).toHaveLength(7);
    expect(rowById(tables.growthTables, 'slow-2021-light').asHatched).toHaveLength(7);
  });

  it.each(ROWS)(
    'makes %s gain, from day %d to %d, %d g on %d g of feed',
    (id, from, to, gain, feed) => {
      const table = rowById(tables.growthTables, id);
      const male = birdGrowth(table, 'male');
      const female = birdGrowth(table, 'female');
      const grams = (values: 'weightKg' | 'cumulativeFeedKg', day: number): number =>
        500 * (male[values][day]! + female[values][day]!);
      // A tenth of a gram is printed.
      expect(Math.abs(grams('weightKg', to) - grams('weightKg', from) - gain)).toBeLessThan(0.06);
      expect(
        Math.abs(grams('cumulativeFeedKg', to) - grams('cumulativeFeedKg', from) - feed),
      ).toBeLessThan(0.06);
    },
  );

  it.each([
    [56, 0.835], // mean over five breeds of 0.61/0.70, 0.72/0.90, 0.70/0.83, 0.66/0.78, 0.56/0.72
    [112, 0.755], // 1.09/1.40, 1.36/1.91, 1.41/1.80, 1.12/1.53, 1.20/1.55
  ])('splits the sexes at %d days by %d (Korean J. Poult. Sci. 50(4), Table 2)', (day, ratio) => {
    const table = rowById(tables.growthTables, 'slow-2021-heavy');
    const got =
      birdGrowth(table, 'female').weightKg[day]! / birdGrowth(table, 'male').weightKg[day]!;
    // Weights are printed to 10 g, which moves a breed's ratio by up to 0.01.
    expect(Math.abs(got - ratio)).toBeLessThan(0.01);
  });
});
