import type { PlainDate } from '../../calendar/plain-date.js';
import type { Tables } from '../../tables/tables.js';
import { homeOn } from '../out-by-day.js';
import type { WorkPerson } from './work-people.js';

/** Whether two people are home at the same hours on every day, however many they have. */
export function areHomeAtOnce(one: WorkPerson, other: WorkPerson, { work }: Tables): boolean {
  const begins = [one, other].map(({ startH }) => (startH ?? work.startH).weekday);
  const isSame = one.byDay === other.byDay && begins[0] === begins[1];
  return isSame || one.byDay === 'at-home' || other.byDay === 'at-home';
}

/**
 * Minutes that two people have at the same hours of a day, who have so many each: all of the one who
 * has fewer, unless both are out of the house by day and are home at different hours.
 */
export function minutesAtOnce(
  one: { readonly person: WorkPerson; readonly minutes: number },
  other: { readonly person: WorkPerson; readonly minutes: number },
  date: PlainDate,
  tables: Tables,
): number {
  const fewer = Math.min(one.minutes, other.minutes);
  if (fewer <= 0) return 0;
  const [ofOne, ofOther] = [one, other].map(({ person, minutes }) =>
    homeOn(person, date, minutes / 60, tables),
  );
  if (!ofOne || !ofOther) return fewer;
  let hours = 0;
  for (const a of ofOne)
    for (const b of ofOther)
      hours += Math.max(0, Math.min(a.toH, b.toH) - Math.max(a.fromH, b.fromH));
  return Math.min(fewer, Math.round(60 * hours));
}
