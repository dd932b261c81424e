import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { yearCurve } from '../../shared/maths/year-curve.js';

const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
function monthMeans(year: readonly number[]): number[] {
  let start = 0;
  return MONTH_DAYS.map((days) => {
    const sum = year.slice(start, start + days).reduce((a, b) => a + b, 0);
    start += days;
    return sum / days;
  });
}
const twelve = (min: number, max: number): fc.Arbitrary<number[]> =>
  fc.array(fc.double({ min, max, noNaN: true }), { minLength: 12, maxLength: 12 });

describe('yearCurve', () => {
  it('has the given months as its means', () => {
    fc.assert(
      fc.property(twelve(-30, 40), (months) => {
        monthMeans(yearCurve(months)).forEach((mean, m) => {
          expect(Math.abs(mean - months[m]!)).toBeLessThan(0.1); // a span of 70 between months
        });
      }),
    );
  });

  it('has them to a thousandth where the year is as smooth as weather', () => {
    const months = [-11, -10.5, -5.5, 0.8, 6.7, 12, 14.4, 13.6, 9.6, 3.9, -0.8, -7];
    monthMeans(yearCurve(months)).forEach((mean, m) => {
      expect(Math.abs(mean - months[m]!)).toBeLessThan(0.01);
    });
  });

  it('stays flat where every month is the same', () => {
    for (const value of yearCurve(new Array<number>(12).fill(7.5))) {
      expect(value).toBeCloseTo(7.5, 9);
    }
  });

  it('joins December to January, and never steps by more than a twelfth of the range a day', () => {
    const year = yearCurve([0, 5, 10, 15, 20, 25, 30, 25, 20, 15, 10, 5]);
    expect(year).toHaveLength(366);
    for (let day = 1; day < 366; day++)
      expect(Math.abs(year[day]! - year[day - 1]!)).toBeLessThan(30 / 12);
    expect(Math.abs(year[0]! - year[364]!)).toBeLessThan(30 / 12);
  });

  it('never falls below its floor', () => {
    fc.assert(
      fc.property(twelve(0, 150), (months) => {
        expect(Math.min(...yearCurve(months, 0))).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  // Penn State Agronomy Guide, table 1.8-8, as growth by month.
  const curves = [
    ['bluegrass', 'medium', [0, 0, 0, 7.4, 66.7, 30.8, 7.29, 7.29, 18.2, 11.4, 0, 0]],
    ['orchardgrass', 'high', [0, 0, 0, 0, 100, 66.7, 40, 40, 57.2, 26.7, 0, 0]],
  ] as readonly (readonly [string, string, readonly number[]])[];
  it.each(curves)('gives the growth of %s, %s, month by month', (_id, _level, months) => {
    const peak = Math.max(...months);
    monthMeans(yearCurve(months, 0)).forEach((mean, m) => {
      const [before, own, after] = [months[(m + 11) % 12]!, months[m]!, months[(m + 1) % 12]!];
      // A month without growth beside one with much gets the foot of the curve: 3 % of the peak at most,
      // which its neighbor then lacks.
      const isFoot = [before, own, after].includes(0);
      expect(Math.abs(mean - own)).toBeLessThan(isFoot ? 0.03 * peak : 0.01 * peak);
    });
  });

  it.each(curves)('gives %s, %s, its growth of the year within 1 %%', (_id, _level, months) => {
    const sum = months.reduce((total, kg, m) => total + kg * MONTH_DAYS[m]!, 0);
    const year = yearCurve(months, 0).slice(0, 365);
    expect(Math.abs(year.reduce((a, b) => a + b, 0) / sum - 1)).toBeLessThan(0.01);
  });
});
