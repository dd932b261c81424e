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
