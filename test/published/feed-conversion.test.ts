import { describe, expect, it } from '@jest/globals';
import { birdGrowth } from '../../shared/poultry/growth.js';
import { rowById } from '../../shared/tables/tables.js';
import { tables } from '../support/factories.js';

/** Feed per gain since hatch, mean of both sexes. */
function feedPerGain(tableId: string, day: number): number {
  const table = rowById(tables.growthTables, tableId);
  const male = birdGrowth(table, 'male');
  const female = birdGrowth(table, 'female');
  const at = (values: 'weightKg' | 'cumulativeFeedKg', age: number): number =>
    (male[values][age]! + female[values][age]!) / 2;
  return at('cumulativeFeedKg', day) / (at('weightKg', day) - at('weightKg', 0));
}

describe('birdGrowth, feed over gain', () => {
  it.each([
    [41, 1.59], // 4427 ÷ (2823 − 40.1)
    [55, 1.82], // 7291 ÷ (4043 − 40.1)
  ])('is that of the 2020 trial at %d days, %d (Poultry Science 99(6), 2020)', (day, ratio) => {
    expect(Math.abs(feedPerGain('fast-2020', day) - ratio)).toBeLessThanOrEqual(0.005); // two decimals
  });

  it('is 2.62 at 84 days for the heavier slow-growing strain (Korean J. Poult. Sci. 48(4), Table 2)', () => {
    expect(Math.abs(feedPerGain('slow-2021-heavy', 84) - 2.62)).toBeLessThanOrEqual(0.005);
  });

  it('is 3.15 at 84 days for the lighter slow-growing strain (Korean J. Poult. Sci. 48(4), Table 2)', () => {
    expect(Math.abs(feedPerGain('slow-2021-light', 84) - 3.15)).toBeLessThanOrEqual(0.005);
  });

  // An independent trial of two fast-growing strains prints conversion by sex (PubMed Central
  // PMC7358716, Table 4); the mean of the two sexes stands here. Within 7 % to 28 days. At 35 days and
  // 42 days it is held to 12 % only: the trial's own figures jump from 1.446 to 1.789 in one week.
  it.each([
    [14, 1.2355, 0.07],
    [21, 1.321, 0.07],
    [28, 1.3915, 0.07],
    [35, 1.446, 0.12],
    [42, 1.7885, 0.12],
  ])('comes near another trial of fast-growing birds at %d days, %d', (day, ratio, tolerance) => {
    expect(Math.abs(feedPerGain('fast-2020', day) / ratio - 1)).toBeLessThan(tolerance);
  });

  it('is well under that of slow organic birds, 3.43 at 84 days (disagreement, said aloud)', () => {
    // A trial of a medium-growing organic bird printed 2799 g at 84 days with conversion 3.43. The
    // heavier strain of the 2021 trial is as heavy but ate about a quarter less. Both are published;
    // the program plans with the trial that prints feed by fortnight.
    const ratio = feedPerGain('slow-2021-heavy', 84) / 3.43;
    expect(ratio).toBeGreaterThan(0.7);
    expect(ratio).toBeLessThan(0.8);
  });
});
