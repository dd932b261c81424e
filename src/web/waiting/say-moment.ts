import { plainDateAt, type PlainDate } from '../../../shared/calendar/plain-date.js';
import { formatDate } from '../../../shared/units/dates.js';
import type { Reader } from '../../../shared/units/format.js';
import { dayIn } from '../kept/day-it-is.js';

/** A reader, and where the clock is that it goes by. */
export interface Place extends Reader {
  readonly timeZone: string;
}

/** The day it is on the farm. */
export const todayAt = ({ timeZone }: Place): PlainDate => dayIn(timeZone);

/** An instant by the farm's clock: “6:10 AM”, and the day before it where that is not today. */
export function sayMoment(instant: string, place: Place): string {
  const { timeZone, units } = place;
  const at = Date.parse(instant);
  const time = new Intl.DateTimeFormat('en-US', {
    timeZone,
    hour: 'numeric',
    minute: '2-digit',
    hour12: units === 'us',
  }).format(at);
  const day = plainDateAt(at, timeZone);
  return day === todayAt(place) ? time : `${formatDate(day, place)}, ${time}`;
}

/** The day of an instant on the farm. */
export const dayOf = (instant: string, { timeZone }: Place): PlainDate =>
  plainDateAt(Date.parse(instant), timeZone);
