import { describe, expect, it } from '@jest/globals';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import { hotDaysC } from '../../shared/weather/hot-day.js';

const SPREAD = { deviations: 2.4, highsSpreadK: 3.5 };

describe('hotDaysC', () => {
  it('goes by the highs of a daily record: further out where one day in ten is', () => {
    const of = (hotC: number): number =>
      hotDaysC({ way: 'csv', meanMaxC: [25], hotMaxC: [hotC] }, SPREAD)[0]!;
    // A tenth lies 1.2816 standard deviations out, the day of one year in ten 2.4.
    expect((of(30) - 25) / (30 - 25)).toBeCloseTo(2.4 / 1.2816, 9);
    expect(of(28)).toBeLessThan(of(30));
  });

  it('does not take the margin of a cold night for the spread of summer days', () => {
    const months = Array<number>(12).fill(25);
    const [narrow, wide] = [3, 12].map(
      (marginK) => hotDaysC(climateFromMonthlyMeans(months, months, marginK), SPREAD)[0],
    );
    expect(narrow).toBe(wide);
    expect(narrow).toBeCloseTo(25 + 2.4 * 3.5, 9);
  });
});
