import { DateTime } from 'luxon';
import { dayOfYear, remember, type PlainDate } from './plain-date.js';
import { dayLengthH } from './day-length.js';

// Every plan of a farm asks for the same days of one zone.
const offsetsH = new Map<string, number>();

/** Hours by which the clock of a place is ahead of UTC at noon of a day, summer time included. */
export function utcOffsetH(date: PlainDate, timeZone: string): number {
  const key = `${date} ${timeZone}`;
  const known = offsetsH.get(key);
  if (known !== undefined) return known;
  const { offset } = DateTime.fromISO(`${date}T12:00`, { zone: timeZone });
  return remember(offsetsH, key, offset / 60);
}

/**
 * Sunrise and sunset on the clock of a place, hours after midnight.
 *
 * Left out: the equation of time, which moves both by up to 16 minutes. In polar night both are
 * noon, on a polar day 12 hours before and after it.
 */
export function sunHours(
  date: PlainDate,
  place: { latitudeDeg: number; longitudeDeg: number; timeZone: string },
): { riseH: number; setH: number } {
  const noonH = 12 - place.longitudeDeg / 15 + utcOffsetH(date, place.timeZone);
  const halfH = dayLengthH({ latitudeDeg: place.latitudeDeg, dayOfYear: dayOfYear(date) }) / 2;
  return { riseH: noonH - halfH, setH: noonH + halfH };
}
