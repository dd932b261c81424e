import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays, daysBetween } from '../../shared/calendar/plain-date.js';
import {
  formatDate,
  formatDayWithoutWeekday,
  formatLongDate,
  formatMonthDay,
  listWeekdays,
} from '../../shared/units/dates.js';

const us = { units: 'us' } as const;
const metric = { units: 'metric' } as const;

const FIRST = '1900-01-01';
const anyDate = fc
  .integer({ min: 0, max: daysBetween(FIRST, '2199-12-31') })
  .map((day) => addDays(FIRST, day));

const WITH_YEAR = { weekday: 'short', day: 'numeric', month: 'short', year: 'numeric' } as const;
const WITHOUT_YEAR = { weekday: 'short', day: 'numeric', month: 'short' } as const;
const DAY_WITH_YEAR = { day: 'numeric', month: 'short', year: 'numeric' } as const;
const MONTH_DAY = { day: 'numeric', month: 'short' } as const;

/**
 * How the runtime writes the same day for a country. It writes British English as "Wed, 21 Apr" or
 * "Wed 21 Apr", by its version, and its September as "Sept": both are taken out, so that the order
 * of weekday, day, month and year is what is compared.
 */
function outside(
  date: string,
  country: 'en-US' | 'en-GB',
  options: Intl.DateTimeFormatOptions,
): string {
  const text = new Intl.DateTimeFormat(country, { ...options, timeZone: 'UTC' }).format(
    new Date(`${date}T00:00Z`),
  );
  return country === 'en-US' ? text : text.replaceAll(',', '').replace('Sept', 'Sep');
}

describe('a date', () => {
  it('is written as the country of the farm’s units writes it', () => {
    fc.assert(
      fc.property(anyDate, (date) => {
        expect(formatLongDate(date, us)).toBe(outside(date, 'en-US', WITH_YEAR));
        expect(formatDate(date, { ...us, today: date })).toBe(outside(date, 'en-US', WITHOUT_YEAR));
        expect(formatMonthDay(date.slice(5), us)).toBe(outside(date, 'en-US', MONTH_DAY));
        expect(formatDayWithoutWeekday(date, us)).toBe(outside(date, 'en-US', DAY_WITH_YEAR));
        expect(formatDayWithoutWeekday(date, metric)).toBe(outside(date, 'en-GB', DAY_WITH_YEAR));
        expect(formatLongDate(date, metric)).toBe(outside(date, 'en-GB', WITH_YEAR));
        expect(formatDate(date, { ...metric, today: date })).toBe(
          outside(date, 'en-GB', WITHOUT_YEAR),
        );
        expect(formatMonthDay(date.slice(5), metric)).toBe(outside(date, 'en-GB', MONTH_DAY));
      }),
    );
  });

  it('reads like these', () => {
    expect(formatLongDate('2027-04-21', us)).toBe('Wed, Apr 21, 2027');
    expect(formatDate('2027-09-01', { ...us, today: '2027-01-01' })).toBe('Wed, Sep 1');
    expect(formatMonthDay('05-20', us)).toBe('May 20');
    expect(formatLongDate('2028-02-29', metric)).toBe('Tue 29 Feb 2028');
    expect(formatDate('2027-09-01', { ...metric, today: '2027-01-01' })).toBe('Wed 1 Sep');
    expect(formatMonthDay('02-29', metric)).toBe('29 Feb');
  });
});

describe('formatDate', () => {
  it('writes the year on the other side of New Year, however near', () => {
    const newYearsEve = { ...us, today: '2026-12-31' };
    expect(formatDate('2026-12-31', newYearsEve)).toBe('Thu, Dec 31');
    expect(formatDate('2027-01-01', newYearsEve)).toBe('Fri, Jan 1, 2027');
    expect(formatDate('2026-12-31', { ...us, today: '2027-01-01' })).toBe('Thu, Dec 31, 2026');
    expect(formatDate('2027-12-31', { ...metric, today: '2027-01-01' })).toBe('Fri 31 Dec');
    expect(formatDayWithoutWeekday('2026-12-31', newYearsEve)).toBe('Dec 31');
    expect(formatDayWithoutWeekday('2027-01-01', newYearsEve)).toBe('Jan 1, 2027');
  });

  it('writes the year just where it is not the reader’s, and where no day is known', () => {
    fc.assert(
      fc.property(anyDate, anyDate, fc.constantFrom(us, metric), (date, today, reader) => {
        const isThisYear = new Date(date).getUTCFullYear() === new Date(today).getUTCFullYear();
        const text = formatDate(date, { ...reader, today });
        expect(/\d{4}/.test(text)).toBe(!isThisYear);
        expect(formatLongDate(date, reader).startsWith(text)).toBe(true);
        expect(formatDate(date, reader)).toBe(formatLongDate(date, reader));
      }),
    );
  });

  it('leaves what is no day as it was typed', () => {
    for (const typed of ['2027-02-30', '2027-13-01', '2027-4-1', 'soon'])
      expect(formatDate(typed, us)).toBe(typed);
    expect(formatDate('2028-02-29', us)).toBe('Tue, Feb 29, 2028');
  });

  it('lists weekdays, three or more in a row by the first and the last', () => {
    expect(listWeekdays([6, 1, 2, 3, 4, 5])).toBe('Monday to Saturday');
    expect(listWeekdays([2, 5, 6])).toBe('Tuesday, Friday and Saturday');
    expect(listWeekdays([1, 2, 3, 5, 7])).toBe('Monday to Wednesday, Friday and Sunday');
  });
});
