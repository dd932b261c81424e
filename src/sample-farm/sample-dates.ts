import { yearOf, type PlainDate } from '../../shared/calendar/plain-date.js';

/** The next such day of the year, this one included. */
export function nextMonthDay(monthDay: string, from: PlainDate): PlainDate {
  const thisYear = `${yearOf(from)}-${monthDay}`;
  return from <= thisYear ? thisYear : `${yearOf(from) + 1}-${monthDay}`;
}

/** Whether a day lies in a part of the year; from late in one year to early in the next as well. */
export function isWithin(
  date: PlainDate,
  { from, to }: { readonly from: string; readonly to: string },
): boolean {
  const monthDay = date.slice(5);
  return from <= to ? from <= monthDay && monthDay <= to : from <= monthDay || monthDay <= to;
}
