import type { DayInZone } from '../../../shared/calendar/day-in-zone.js';
import { plainDateAt, type PlainDate } from '../../../shared/calendar/plain-date.js';
import { serviceNowMs } from './clock.js';

/** The day that the service said it is, by time zone. */
const said = new Map<string, DayInZone>();

/** Takes the day from an answer of the service. */
export const learnDay = (day: DayInZone): void => void said.set(day.timeZone, day);

/** Whether it is that day now. */
export function isNow({ fromMs, untilMs }: DayInZone): boolean {
  const now = serviceNowMs();
  return fromMs <= now && now < untilMs;
}

/**
 * The day it is in a time zone, by the service's clock. As long as it is the day that the service said,
 * nothing is worked out: a browser's first date in a zone takes a phone a fifth of a second.
 */
export function dayIn(timeZone: string): PlainDate {
  const day = said.get(timeZone);
  return day && isNow(day) ? day.date : plainDateAt(serviceNowMs(), timeZone);
}
