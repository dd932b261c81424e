import { DateTime } from 'luxon';
import { addDays, type PlainDate } from './plain-date.js';

/** A calendar day, and from when to when it is that day in a time zone. */
export interface DayInZone {
  readonly date: PlainDate;
  readonly timeZone: string;
  /** Its first moment and the next day's, ms since the epoch. */
  readonly fromMs: number;
  readonly untilMs: number;
}

/** A day with its first and last moment in a time zone, on whatever day clocks are set. */
export function dayInZone(date: PlainDate, timeZone: string): DayInZone {
  const startOf = (day: PlainDate): number => {
    const start = DateTime.fromISO(day, { zone: timeZone }).startOf('day');
    // Where clocks are set back at one, midnight comes twice.
    return Math.min(...start.getPossibleOffsets().map((each) => each.toMillis()));
  };
  return { date, timeZone, fromMs: startOf(date), untilMs: startOf(addDays(date, 1)) };
}
