import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { DateTime } from 'luxon';
import {
  addDays,
  dayOfYear,
  daysBetween,
  daysOfYear,
  isLeapYear,
  isPlainDate,
  isTimeZone,
  plainDateAt,
  weekdayOf,
  yearOf,
} from '../../shared/calendar/plain-date.js';

/** Any day of 1900 to 2199, counted on the independent clock of the runtime. */
const anyDate = fc
  .integer({ min: Date.UTC(1900, 0, 1) / 864e5, max: Date.UTC(2199, 11, 31) / 864e5 })
  .map((day) => new Date(day * 864e5).toISOString().slice(0, 10));

describe('addDays', () => {
  it('counts 21 days across the spring clock change', () => {
    expect(addDays('2027-03-10', 21)).toBe('2027-03-31'); // New York changes on 14 March
    expect(addDays('2027-03-27', 1)).toBe('2027-03-28'); // Central Europe changes on the 28th
    expect(addDays('2027-10-30', 2)).toBe('2027-11-01');
  });

  it('passes 29 February in a leap year and not in another', () => {
    expect(addDays('2028-02-28', 1)).toBe('2028-02-29');
    expect(addDays('2028-02-28', 2)).toBe('2028-03-01');
    expect(addDays('2027-02-28', 1)).toBe('2027-03-01');
    expect(addDays('2100-02-28', 1)).toBe('2100-03-01'); // a century that is no leap year
    expect(addDays('2000-02-28', 1)).toBe('2000-02-29'); // and one that is
  });

  it('gives 29 February plus 365 days, and plus 366', () => {
    expect(addDays('2028-02-29', 365)).toBe('2029-02-28');
    expect(addDays('2028-02-29', 366)).toBe('2029-03-01');
  });

  it('crosses the end of a year both ways', () => {
    expect(addDays('2026-12-31', 1)).toBe('2027-01-01');
    expect(addDays('2027-01-01', -1)).toBe('2026-12-31');
    expect(addDays('2027-01-01', 0)).toBe('2027-01-01');
  });

  it('is undone by the same number of days back', () => {
    fc.assert(
      fc.property(anyDate, fc.integer({ min: -2000, max: 2000 }), (date, days) => {
        expect(addDays(addDays(date, days), -days)).toBe(date);
      }),
    );
  });

  it('agrees with the runtime clock and with luxon', () => {
    fc.assert(
      fc.property(anyDate, fc.integer({ min: -2000, max: 2000 }), (date, days) => {
        const [y, m, d] = date.split('-').map(Number) as [number, number, number];
        const byClock = new Date(Date.UTC(y, m - 1, d + days)).toISOString().slice(0, 10);
        const byLuxon = DateTime.fromISO(date, { zone: 'utc' }).plus({ days }).toISODate();
        expect(addDays(date, days)).toBe(byClock);
        expect(addDays(date, days)).toBe(byLuxon);
      }),
    );
  });
});

describe('daysBetween', () => {
  it('gives back the days that were added', () => {
    fc.assert(
      fc.property(anyDate, fc.integer({ min: -2000, max: 2000 }), (date, days) => {
        expect(daysBetween(date, addDays(date, days))).toBe(days);
      }),
    );
  });

  it('adds up over a day in between, and turns round with its sign', () => {
    fc.assert(
      fc.property(anyDate, anyDate, anyDate, (a, b, c) => {
        expect(daysBetween(a, b) + daysBetween(b, c)).toBe(daysBetween(a, c));
        expect(daysBetween(a, b) + daysBetween(b, a)).toBe(0);
        expect(a < b).toBe(daysBetween(a, b) > 0); // text order is date order
      }),
    );
  });

  it('gives a year 365 days and a leap year 366', () => {
    expect(daysBetween('2027-01-01', '2028-01-01')).toBe(365);
    expect(daysBetween('2028-01-01', '2029-01-01')).toBe(366);
  });
});

describe('isPlainDate', () => {
  it.each(['1900-01-01', '2027-04-21', '2028-02-29', '2199-12-31'])('takes %s', (text) => {
    expect(isPlainDate(text)).toBe(true);
  });

  it.each([
    '2027-02-29',
    '2027-13-01',
    '2027-00-10',
    '2027-04-31',
    '2027-4-21',
    '21-04-2027',
    '2027-04-21T00:00',
    '1899-12-31',
    '2200-01-01',
    '',
    ' 2027-04-21',
    null,
    undefined,
    20270421,
    new Date(0),
  ])('refuses %p', (given) => {
    expect(isPlainDate(given)).toBe(false);
  });
});

describe('dayOfYear', () => {
  it.each([
    ['2027-01-01', 1],
    ['2027-12-31', 365],
    ['2028-12-31', 366],
    ['2028-02-29', 60],
    ['2027-03-01', 60],
    ['2028-03-01', 61],
    ['1998-09-03', 246], // FAO-56, example 8
  ])('numbers %s as %d', (date, day) => {
    expect(dayOfYear(date)).toBe(day);
  });

  it('numbers a run of days as each of them alone', () => {
    fc.assert(
      fc.property(anyDate, fc.integer({ min: 1, max: 800 }), (from, count) => {
        fc.pre(from < '2190');
        const run = daysOfYear(from, count);
        expect(run).toHaveLength(count);
        for (const i of [0, Math.floor(count / 2), count - 1]) {
          expect(run[i]).toBe(dayOfYear(addDays(from, i)));
        }
      }),
    );
  });
});

describe('weekdayOf', () => {
  it('calls 21 April 2027 a Wednesday, 3', () => {
    expect(weekdayOf('2027-04-21')).toBe(3);
  });

  it('counts 1 Monday to 7 Sunday as the runtime clock does', () => {
    fc.assert(
      fc.property(anyDate, (date) => {
        expect(weekdayOf(date) % 7).toBe(new Date(`${date}T00:00Z`).getUTCDay());
        expect(weekdayOf(addDays(date, 7))).toBe(weekdayOf(date));
      }),
    );
  });
});

describe('yearOf and isLeapYear', () => {
  it('reads the year and knows the century rule', () => {
    expect(yearOf('2027-04-21')).toBe(2027);
    expect([2027, 2028, 2100, 2000].map(isLeapYear)).toEqual([false, true, false, true]);
  });
});

describe('plainDateAt', () => {
  it('gives two places two days at one instant', () => {
    const instantMs = Date.UTC(2027, 3, 21, 2, 30); // 21 April, 02:30 in Greenwich
    expect(plainDateAt(instantMs, 'America/New_York')).toBe('2027-04-20');
    expect(plainDateAt(instantMs, 'Pacific/Auckland')).toBe('2027-04-21');
    expect(plainDateAt(instantMs, 'UTC')).toBe('2027-04-21');
  });

  it('keeps the day through the hour that is skipped or repeated', () => {
    expect(plainDateAt(Date.UTC(2027, 2, 14, 6, 59), 'America/New_York')).toBe('2027-03-14');
    expect(plainDateAt(Date.UTC(2027, 2, 14, 7, 1), 'America/New_York')).toBe('2027-03-14');
    expect(plainDateAt(Date.UTC(2027, 10, 7, 5, 30), 'America/New_York')).toBe('2027-11-07');
    expect(plainDateAt(Date.UTC(2027, 10, 7, 6, 30), 'America/New_York')).toBe('2027-11-07');
  });
});

describe('isTimeZone', () => {
  it('knows names of places and refuses anything else', () => {
    expect(['UTC', 'Pacific/Auckland', 'America/New_York'].map(isTimeZone)).toEqual([
      true,
      true,
      true,
    ]);
    expect(['', 'Nowhere/Land', 'EST5EDT4', 5, null, undefined].map(isTimeZone)).toEqual(
      Array(6).fill(false),
    );
  });
});
