import { describe, expect, it } from '@jest/globals';
import { dayLengthH } from '../../shared/calendar/day-length.js';
import { addDays, daysOfYear, monthOf } from '../../shared/calendar/plain-date.js';
import { henDayShare } from '../../shared/poultry/lay.js';
import { layByAge, moltDays } from '../../shared/poultry/lay-cycles.js';
import { rowById } from '../../shared/tables/tables.js';
import { tables } from '../support/factories.js';

const { molt } = tables.laying;
const yearOf = (latitudeDeg: number): number[] =>
  Array.from({ length: 366 }, (_, k) => dayLengthH({ latitudeDeg, dayOfYear: k + 1 }));
const daysFrom = (date: string) => ({ firstAgeDays: 0, dayOfYear: daysOfYear(date, 4 * 365) });

describe('moltDays', () => {
  it('lets spring pullets lay through their first fall, and molt in the next ones', () => {
    const hatched = '2027-04-10';
    const dates = moltDays(molt, yearOf(45), daysFrom(hatched)).map((day) => addDays(hatched, day));
    expect(dates.map((date) => date.slice(0, 7))).toEqual(['2028-10', '2029-10', '2030-10']);
  });

  it('molts half a year away in the south', () => {
    const hatched = '2027-10-10';
    const [first] = moltDays(molt, yearOf(-40), daysFrom(hatched));
    expect([4, 5]).toContain(monthOf(addDays(hatched, first!)));
  });

  it('goes by age where the day hardly changes', () => {
    expect(moltDays(molt, yearOf(0), daysFrom('2027-04-10'))[0]).toBe(7 * molt.seasonlessAgeWeeks);
  });
});

describe('layByAge', () => {
  const curve = rowById(tables.layCurves, 'brown-egg');
  const days = daysFrom('2027-04-10');
  const begins = moltDays(molt, yearOf(45), days);
  const share = layByAge(curve, tables.laying, days, begins);

  it('is the curve of the strain until the first molt', () => {
    for (const day of [100, 200, 400]) expect(share[day]).toBe(henDayShare(curve, day / 7));
  });

  it('falls to little in a molt and comes back below what it was, year after year', () => {
    const least = (k: number) => Math.min(...share.subarray(begins[k]!, begins[k]! + 60));
    const most = (k: number) => Math.max(...share.subarray(begins[k]!, begins[k]! + 300));
    expect(least(0)).toBeLessThan(0.15);
    const peaks = [Math.max(...share.subarray(0, begins[0])), ...[0, 1].map(most)];
    expect(peaks).toEqual([...peaks].sort((a, b) => b - a));
  });

  it('never leaps from one day to the next by more than a tenth', () => {
    for (let day = begins[0]! - 10; day < share.length; day++)
      expect(Math.abs(share[day]! - share[day - 1]!)).toBeLessThan(0.1);
  });
});
