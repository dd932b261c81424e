import { DateTime } from 'luxon';
import { listed } from './listed.js';
import type { UnitSystem } from './unit.js';

/**
 * Who reads a date. The unit system is the nearest thing a farm tells of its country: with US
 * customary units the month stands before the day, with metric ones after it.
 */
export interface DateReader {
  readonly units: UnitSystem;
  /** The day on which it is read: a date of the same year is written without the year. */
  readonly today?: string | undefined;
}

/** How each system writes a date, in luxon's letters. */
const PATTERNS = {
  us: {
    withYear: 'ccc, LLL d, yyyy',
    withoutYear: 'ccc, LLL d',
    dayWithYear: 'LLL d, yyyy',
    monthDay: 'LLL d',
  },
  metric: {
    withYear: 'ccc d LLL yyyy',
    withoutYear: 'ccc d LLL',
    dayWithYear: 'd LLL yyyy',
    monthDay: 'd LLL',
  },
} as const satisfies Record<UnitSystem, Record<string, string>>;

/**
 * A date with its weekday, and with the year where it is not the year of the reader's day or that
 * day is not known: Wed, Apr 21 or Wed 21 Apr; Wed, Apr 21, 2027 or Wed 21 Apr 2027.
 */
export function formatDate(date: string, reader: DateReader): string {
  return isThisYear(date, reader)
    ? written(date, PATTERNS[reader.units].withoutYear)
    : formatLongDate(date, reader);
}

/** The same, always with the year: for what is kept, such as the head of a printed sheet. */
export const formatLongDate = (date: string, { units }: DateReader): string =>
  written(date, PATTERNS[units].withYear);

/** The same without the weekday, for the narrow places of a chart: Apr 21 or 21 Apr 2027. */
export const formatDayWithoutWeekday = (date: string, reader: DateReader): string =>
  written(date, PATTERNS[reader.units][isThisYear(date, reader) ? 'monthDay' : 'dayWithYear']);

/** The month of a date, with its year: Apr 2027. */
export const formatMonth = (date: string): string => written(date, 'LLL yyyy');

const isThisYear = (date: string, { today }: DateReader): boolean =>
  date.slice(0, 4) === today?.slice(0, 4);

/** The name of an ISO weekday, 1 Monday to 7 Sunday. */
export const formatWeekday = (weekday: number): string => WEEKDAYS[weekday - 1]!;

/** Weekdays in words, three or more in a row by the first and the last: “Monday to Friday and Sunday”. */
export function listWeekdays(weekdays: readonly number[]): string {
  const runs: number[][] = [];
  for (const day of weekdays.toSorted((a, b) => a - b)) {
    if (runs.at(-1)?.at(-1) === day - 1) runs.at(-1)!.push(day);
    else runs.push([day]);
  }
  return listed(
    runs.flatMap((run) =>
      run.length < 3
        ? run.map(formatWeekday)
        : [`${formatWeekday(run[0]!)} to ${formatWeekday(run.at(-1)!)}`],
    ),
  );
}

export const WEEKDAYS = [
  'Monday',
  'Tuesday',
  'Wednesday',
  'Thursday',
  'Friday',
  'Saturday',
  'Sunday',
] as const;

/** A month and day such as 05-20, in no particular year: May 20 or 20 May. */
export const formatMonthDay = (monthDay: string, { units }: DateReader): string =>
  written(`${LEAP_YEAR}-${monthDay}`, PATTERNS[units].monthDay);

/** A year that has every day a month can have. */
const LEAP_YEAR = 2024;

// A plan names the same few hundred dates in thousands of sentences, and writing one takes luxon
// some microseconds.
const MOST_REMEMBERED = 5000;
const remembered = new Map<string, Map<string, string>>();

function written(date: string, pattern: string): string {
  let texts = remembered.get(pattern);
  if (texts === undefined) remembered.set(pattern, (texts = new Map()));
  let text = texts.get(date);
  if (text === undefined) {
    if (MOST_REMEMBERED <= texts.size) texts.clear();
    // English by name: luxon would take the machine's language else.
    text = DateTime.fromISO(date, { zone: 'utc', locale: 'en-US' }).toFormat(pattern);
    texts.set(date, text);
  }
  return text;
}

/** A full hour of the day, 0 to 23, as a clock of that country says it: 10 pm, 22:00. */
export function formatHour(hour: number, units: UnitSystem): string {
  const minutes = Math.round(60 * hour);
  const at = DateTime.fromObject({ hour: Math.floor(minutes / 60), minute: minutes % 60 });
  if (units !== 'us') return at.toFormat('HH:mm');
  return at.toFormat(at.minute === 0 ? 'h a' : 'h:mm a').toLowerCase();
}

/** An hour of the clock: 5:30 pm, or 17:30 with metric units. */
export function formatClock(hour: number, { units }: Pick<DateReader, 'units'>): string {
  const time = DateTime.fromObject({ hour: 0 }).plus({ minutes: Math.round(60 * hour) });
  if (units === 'metric') return time.toFormat('H:mm');
  return time.toFormat(time.minute === 0 ? 'h a' : 'h:mm a').toLowerCase();
}
