/** A calendar day without a time or a zone, written 2027-04-21. */
export type PlainDate = string;

const DATE_LENGTH = '2027-04-21'.length;
const SHAPE = /^\d{4}-\d{2}-\d{2}$/;
export const EARLIEST_YEAR = 1900;
export const LATEST_YEAR = 2199;

/** True for a real calendar day in the years 1900 to 2199, written year-month-day. */
export function isPlainDate(text: unknown): text is PlainDate {
  if (typeof text !== 'string' || !SHAPE.test(text)) return false;
  const year = yearOf(text);
  return EARLIEST_YEAR <= year && year <= LATEST_YEAR && !Number.isNaN(epochDayOf(text));
}

/** The date a number of days later (or earlier, when negative). Counts calendar days. */
export function addDays(date: PlainDate, days: number): PlainDate {
  return dateOfEpochDay(epochDayOf(date) + days);
}

/** A number of days one after another. */
export const datesFrom = (first: PlainDate, count: number): PlainDate[] =>
  Array.from({ length: count }, (_, k) => addDays(first, k));

/** Calendar days from one date to another; negative when `to` is the earlier one. */
export function daysBetween(from: PlainDate, to: PlainDate): number {
  return epochDayOf(to) - epochDayOf(from);
}

/** Days of a common year before each month. */
const DAYS_BEFORE = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];

/** Day of the year, 1 to 366. Counted from the text: a daily record asks for thousands of dates. */
export function dayOfYear(date: PlainDate): number {
  const month = monthOf(date);
  const leapDay = 2 < month && isLeapYear(yearOf(date)) ? 1 : 0;
  return DAYS_BEFORE[month - 1]! + leapDay + Number(date.slice(8));
}

export const yearOf = (date: PlainDate): number => Number(date.slice(0, 4));

/** 1 January … 12 December. */
export const monthOf = (date: PlainDate): number => Number(date.slice(5, 7));

/** 1 Monday … 7 Sunday (ISO 8601); 1 January 1970 was a Thursday. */
export const weekdayOf = (date: PlainDate): number => ((((epochDayOf(date) + 3) % 7) + 7) % 7) + 1;

export const isLeapYear = (year: number): boolean =>
  year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);

/** Day-of-year (1–366) of each of `count` days from a date on; 29 February takes its own number. */
export function daysOfYear(from: PlainDate, count: number): Int16Array {
  const result = new Int16Array(count);
  let year = yearOf(from);
  let day = dayOfYear(from);
  let last = isLeapYear(year) ? 366 : 365;
  for (let i = 0; i < count; i++) {
    result[i] = day;
    day++;
    if (last < day) {
      day = 1;
      year++;
      last = isLeapYear(year) ? 366 : 365;
    }
  }
  return result;
}

/** The calendar day it is now in a time zone, from an instant that the caller hands in. */
export function plainDateAt(instantMs: number, timeZone: string): PlainDate {
  const parts = writerOf(timeZone).formatToParts(instantMs);
  const part = (of: string): string => parts.find(({ type }) => type === of)!.value;
  return `${part('year')}-${part('month')}-${part('day')}`;
}

const writers = new Map<string, Intl.DateTimeFormat>();
/** One for each zone: it is long in the making. */
const writerOf = (timeZone: string): Intl.DateTimeFormat =>
  writers.get(timeZone) ??
  remember(
    writers,
    timeZone,
    new Intl.DateTimeFormat('en-US', {
      timeZone,
      ...{ calendar: 'gregory', year: 'numeric', month: '2-digit', day: '2-digit' },
    }),
  );

export function isTimeZone(zone: unknown): zone is string {
  if (typeof zone !== 'string' || zone === '') return false;
  try {
    return writerOf(zone) !== undefined;
  } catch {
    return false;
  }
}

const DAY_MS = 86_400_000;

// A plan asks for the same few hundred dates thousands of times, and parsing one costs microseconds.
const MOST_REMEMBERED = 20_000;
const epochDays = new Map<PlainDate, number>();
const FIRST_DAY = Date.UTC(EARLIEST_YEAR) / DAY_MS;
const DAYS_THERE_ARE = Date.UTC(LATEST_YEAR + 1) / DAY_MS - FIRST_DAY;
/** By the days since the first: a plan asks hundreds of thousands of times, and a list is quicker than a map. */
const datesByDay = new Array<PlainDate | undefined>(DAYS_THERE_ARE);

/** NaN for a day that no calendar has. */
function epochDayOf(date: PlainDate): number {
  const known = epochDays.get(date);
  if (known !== undefined) return known;
  // Plain dates are handled in UTC, where every day has 24 hours, so a clock change cannot move one.
  const day = SHAPE.test(date) ? Date.parse(date) / DAY_MS : Number.NaN;
  const isDay = !Number.isNaN(day) && dateOfEpochDay(day) === date;
  return remember(epochDays, date, isDay ? day : Number.NaN);
}

function dateOfEpochDay(day: number): PlainDate {
  const at = Math.floor(day - FIRST_DAY);
  return 0 <= at && at < DAYS_THERE_ARE
    ? (datesByDay[at] ??= textOf(new Date(day * DAY_MS)))
    : textOf(new Date(day * DAY_MS));
}

/** No text for what is no moment: whoever reads a date checks it first. */
const textOf = (day: Date): PlainDate =>
  Number.isNaN(day.getTime()) ? '' : day.toISOString().slice(0, DATE_LENGTH);

/** Keeps what was worked out, within bounds; it is what it returns. */
export function remember<K, V>(cache: Map<K, V>, key: K, value: V): V {
  if (MOST_REMEMBERED <= cache.size) cache.clear();
  cache.set(key, value);
  return value;
}
