import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { DailyWeather } from '../../shared/weather/climate.js';
import { fToC } from '../../shared/units/convert.js';
import { frostDates, halfYearDays, recordedFrost } from '../../shared/weather/frost.js';

// Last day of spring and first of fall at 32 °F or below, Fort Collins, Colorado, 1970 to 1999,
// as days of a common year: read from the century of daily weather of the Colorado Climate Center
// (data set FCwx of the R package extRemes).
const LAST = [
  144, 139, 122, 123, 120, 127, 132, 111, 129, 131, 108, 130, 126, 141, 120, 134, 109, 112, 124,
  121, 130, 123, 115, 122, 120, 117, 119, 123, 119, 132,
];
const FIRST = [
  265, 260, 296, 270, 255, 274, 280, 282, 264, 283, 289, 290, 280, 263, 268, 267, 277, 283, 296,
  289, 280, 278, 281, 257, 265, 264, 270, 282, 279, 271,
];
const NORTH = { thresholdC: 0, latitudeDeg: 40.5, sureShare: 0.9 };
const day = (n: number): string => addDays('2023-01-01', n - 1).slice(5);

/** A record with a frost on the given days only, mild on all others. */
function record(frosts: (year: number, dayOfYear: number) => boolean, years = 30): DailyWeather[] {
  const days: DailyWeather[] = [];
  for (let year = 1970; year < 1970 + years; year++)
    for (let n = 1; n <= 365; n++)
      days.push({ date: `${year}-${day(n)}`, minC: frosts(year, n) ? 0 : 8, maxC: 20 });
  return days;
}
const fortCollins = record(
  (year, n) => n <= LAST[year - 1970]! - 3 || n === LAST[year - 1970] || FIRST[year - 1970]! <= n,
);

describe('frostDates', () => {
  const frost = frostDates(recordedFrost(fortCollins, NORTH.latitudeDeg), NORTH);

  // Percentiles (n − 1)q of the 30 years, worked out apart from this program.
  it.each([
    ['tenth', 111.9, '04-22'],
    ['half', 123, '05-03'],
    ['ninetieth', 134.5, '05-15'],
  ] as const)('has the last spring frost of the %s percentile on day %d', (share, _, date) => {
    expect(frost.lastSpring![share]).toBe(date);
  });

  it.each([
    ['tenth', 262.7, '09-20'],
    ['half', 277.5, '10-05'],
    ['ninetieth', 289.1, '10-16'],
  ] as const)('has the first fall frost of the %s percentile on day %d', (share, _, date) => {
    expect(frost.firstAutumn![share]).toBe(date);
  });

  it('counts 36 °F, which is 2.22 °C, as the frost of 2.2 °C that it is printed as, and 37 °F not', () => {
    const low = (f: number) =>
      record((_, n) => n <= 100).map((day) => ({ ...day, minC: day.minC === 0 ? fToC(f) : 8 }));
    const springs = (f: number): number =>
      frostDates(recordedFrost(low(f), 40.5), { ...NORTH, thresholdC: 2.2 }).springsWithFrost;
    expect([springs(36), springs(37)]).toEqual([30, 0]);
  });

  it('counts a low at the threshold as a frost, and no warmer one', () => {
    const warmer = frostDates(recordedFrost(fortCollins, 40.5), { ...NORTH, thresholdC: -0.1 });
    expect(frost.springsWithFrost).toBe(30);
    expect(warmer).toMatchObject({ springs: 30, springsWithFrost: 0 });
    expect(warmer.lastSpring).toBeUndefined();
  });

  it('says in how many years it froze where it does not in all', () => {
    const some = record((year, n) => year % 3 === 0 && n === 60);
    const dates = frostDates(recordedFrost(some, 40.5), NORTH);
    expect(dates).toMatchObject({ springs: 30, springsWithFrost: 10, autumnsWithFrost: 0 });
    expect(dates.lastSpring).toEqual({ tenth: '03-01', half: '03-01', ninetieth: '03-01' });
  });

  it('parts the year half a year later south of the equator', () => {
    const south = record((_, n) => n === 135 || n === 260); // 15 May and 17 September
    const dates = frostDates(recordedFrost(south, -38), { ...NORTH, latitudeDeg: -38 });
    expect(dates.firstAutumn!.half).toBe('05-15');
    expect(dates.lastSpring!.half).toBe('09-17');
  });

  it('leaves out a half-year with ten missing days, and takes a leap day as the one before', () => {
    const year = record((_, n) => n === 59, 1).map((each) => ({
      ...each,
      date: each.date.replace('1970', '1972'),
    }));
    const leap = { date: '1972-02-29', minC: -3, maxC: 5 };
    const withLeap = [...year.slice(0, 59), leap, ...year.slice(59)];
    const at = { ...NORTH, thresholdC: -1, latitudeDeg: 50 };
    expect(frostDates(recordedFrost(withLeap, 50), at).lastSpring!.half).toBe('02-28');
    const holey = year.filter((_, i) => i < 100 || 110 <= i);
    expect(frostDates(recordedFrost(holey, 50), at)).toMatchObject({ springs: 0, autumns: 1 });
  });

  it('numbers the days of its half-years for drawing weather', () => {
    const { spring, autumn } = halfYearDays(50);
    expect([spring[0], spring.at(-1), autumn[0], autumn.at(-1)]).toEqual([1, 212, 213, 365]);
    const south = halfYearDays(-30);
    expect([south.spring[0], south.spring.at(-1), south.autumn[0]]).toEqual([182, 31, 32]);
  });
});
