import { weekdayOf, type PlainDate } from '../calendar/plain-date.js';
import type { Person } from '../farm/farm.js';
import type { Tables } from '../tables/tables.js';

/** Hours of the clock between which somebody is out. */
export interface Out {
  readonly fromH: number;
  readonly toH: number;
}

const NOON_H = 12;

/**
 * When a person who is there is out of the house on a date: on weekdays, where it was said or where
 * their hours for the farm begin in the afternoon. Undefined where they are there all day.
 */
export function outOn(
  person: Pick<Person, 'byDay' | 'startH'>,
  date: PlainDate,
  { work }: Tables,
): Out | undefined {
  if (6 <= weekdayOf(date)) return undefined;
  const { outByDay } = work;
  const { weekday } = person.startH ?? work.startH;
  if (person.byDay === 'out-am') return { fromH: outByDay.fromH, toH: NOON_H };
  if (person.byDay === 'out-pm') return { fromH: NOON_H, toH: outByDay.toH };
  const isAfternoon = NOON_H <= weekday;
  const isOut = person.byDay === undefined ? isAfternoon : person.byDay === 'out';
  return isOut ? { fromH: outByDay.fromH, toH: isAfternoon ? weekday : outByDay.toH } : undefined;
}

/** Hours of the clock that somebody gives, of a day on which they are out. */
export interface HoursAtHome {
  readonly fromH: number;
  readonly toH: number;
}

/**
 * When somebody who is out by day has so many hours: from when they begin, and on when they are home
 * again. Undefined where they are there all day and can begin at any time.
 */
export function homeOn(
  person: Pick<Person, 'byDay' | 'startH'>,
  date: PlainDate,
  hours: number,
  tables: Tables,
): readonly HoursAtHome[] | undefined {
  const out = outOn(person, date, tables);
  if (!out) return undefined;
  const fromH = (person.startH ?? tables.work.startH).weekday;
  const beforeH = Math.min(hours, Math.max(0, out.fromH - fromH));
  const homeH = Math.max(fromH, out.toH);
  return [
    { fromH, toH: fromH + beforeH },
    { fromH: homeH, toH: homeH + hours - beforeH },
  ].filter((span) => span.fromH < span.toH);
}
