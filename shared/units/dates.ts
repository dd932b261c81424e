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

/** How each system writes a date: weekday, month, day and year where their letters stand. */
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

/** What each of the letters stands for, in English whatever the machine speaks. */
const LETTERS: Readonly<Record<string, (date: string) => string>> = {
  ccc: (date) => WEEKDAYS[(dayOf(date) + 6) % 7]!.slice(0, 3),
  LLL: (date) => MONTHS[Number(date.slice(5, 7)) - 1]!,
  d: (date) => String(Number(date.slice(8))),
  yyyy: (date) => date.slice(0, 4),
};
/** 0 Sunday to 6 Saturday; NaN for a day that its month has not. */
function dayOf(date: string): number {
  const day = new Date(`${date}T00:00Z`);
  return day.getUTCDate() === Number(date.slice(8)) ? day.getUTCDay() : NaN;
}
const LETTER = /ccc|LLL|yyyy|d/g;
const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

/** What is no date stays as it was typed. */
const written = (date: string, pattern: string): string =>
  Number.isNaN(dayOf(date)) ? date : pattern.replace(LETTER, (of) => LETTERS[of]!(date));

/** A full hour of the day, 0 to 23, as a clock of that country says it: 10 pm, 22:00. */
export const formatHour = (hour: number, units: UnitSystem): string =>
  units === 'us' ? onTwelve(hour) : onTwentyFour(hour).padStart('00:00'.length, '0');

/** An hour of the clock: 5:30 pm, or 17:30 with metric units. */
export const formatClock = (hour: number, { units }: Pick<DateReader, 'units'>): string =>
  units === 'metric' ? onTwentyFour(hour) : onTwelve(hour);

function onTwelve(hour: number): string {
  const { h, min } = clockOf(hour);
  const half = h < 12 ? 'am' : 'pm';
  const of = h % 12 === 0 ? 12 : h % 12;
  return min === 0 ? `${of} ${half}` : `${of}:${twoDigits(min)} ${half}`;
}

function onTwentyFour(hour: number): string {
  const { h, min } = clockOf(hour);
  return `${h}:${twoDigits(min)}`;
}

const twoDigits = (n: number): string => String(n).padStart(2, '0');

const DAY_MIN = 24 * 60;
/** The hand of the clock, also of an hour before or after the day. */
function clockOf(hour: number): { readonly h: number; readonly min: number } {
  const minutes = ((Math.round(60 * hour) % DAY_MIN) + DAY_MIN) % DAY_MIN;
  return { h: Math.floor(minutes / 60), min: minutes % 60 };
}
