import { describe, expect, it } from '@jest/globals';
import { seededRandom } from '../../shared/schedule/random.js';
import { chanceOfDryRun, hasDryRun } from '../../shared/weather/dry-run.js';
import { randomRain } from '../../shared/weather/rain-days.js';

/** As wet as a coin falls heads, whatever the day before was. */
const COIN = { meanRainMm: 8, wetAfterWetShare: 0.5 };
const days = (count: number, meanMm: number): number[] => new Array<number>(count).fill(meanMm);

describe('chanceOfDryRun', () => {
  // Runs of three heads: 24 of 32 sequences of five coins and 504 of 1,024 of ten have none
  // (the tribonacci numbers; Feller, An Introduction to Probability Theory I, XIII.7).
  it.each([
    [5, 8 / 32],
    [10, 520 / 1024],
  ])('of three in %i fair days is that of three heads in a row', (count, chance) => {
    expect(chanceOfDryRun(days(count, 4), 3, COIN)).toBeCloseTo(chance, 12);
  });

  it('is that of a chain that is drawn', () => {
    const habit = { meanRainMm: 8, wetAfterWetShare: 0.44 };
    const random = seededRandom(3);
    // The first day of a drawn chain follows a dry one: it is drawn from days before.
    const drawn = Array.from({ length: 4000 }, () =>
      hasDryRun(randomRain(days(35, 3), habit, random).subarray(20), 5, 1e-9),
    );
    const share = drawn.filter(Boolean).length / drawn.length;
    // Three standard errors of a share near a half of 4,000 are 2.4 points.
    expect(Math.abs(chanceOfDryRun(days(15, 3), 5, habit) - share)).toBeLessThan(0.024);
  });

  it('is sure without rain, and none where there are too few days', () => {
    expect(chanceOfDryRun(days(15, 0), 5, COIN)).toBe(1);
    expect(chanceOfDryRun(days(4, 0), 5, COIN)).toBe(0);
  });
});

describe('hasDryRun', () => {
  it('counts days below what is called wet', () => {
    expect(hasDryRun([2, 0.9, 0, 0.5, 2], 3, 1)).toBe(true);
    expect(hasDryRun([2, 0.9, 1, 0.5, 0], 3, 1)).toBe(false);
  });
});
