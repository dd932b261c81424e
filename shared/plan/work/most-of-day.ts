import { weekdayOf, type PlainDate } from '../../calendar/plain-date.js';
import type { Tables } from '../../tables/tables.js';
import { outOn } from '../out-by-day.js';
import { hoursOn, isThere, type WorkPerson } from './work-people.js';
import type { WorkRequest } from './work-request.js';

/**
 * The most minutes of a day that anybody is asked for, what they have included: until night, without
 * those that they are out of the house, and no day too long.
 */
export function mostMinutesOf(person: WorkPerson, date: PlainDate, tables: Tables): number {
  const { longestDayH, nightFromH } = tables.judgements.work;
  const { weekday, weekend } = person.startH ?? tables.work.startH;
  const begins = weekdayOf(date) < 6 ? weekday : weekend;
  const fromH = Math.min(begins, tables.work.outByDay.fromH);
  const out = outOn(person, date, tables);
  const outH = out ? Math.max(0, out.toH - Math.max(fromH, out.fromH)) : 0;
  return Math.floor(60 * Math.min(longestDayH.value, nightFromH.value - fromH - outH));
}

/** Minutes for which somebody may be asked on a date beside their own; who is away is not asked. */
export const mayBeAskedFor = (person: WorkPerson, date: PlainDate, request: WorkRequest): number =>
  isThere(person, date, request)
    ? mostMinutesOf(person, date, request.tables) - 60 * hoursOn(person, date, request)
    : Infinity;
