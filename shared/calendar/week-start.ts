import { getWeekStartByRegion } from 'weekstart';
import { addDays, weekdayOf, type PlainDate } from './plain-date.js';

/**
 * The first day of the week that a date lies in, as the country counts its weeks; where no country
 * is known, Sunday begins them where feet and pounds are used, else Monday.
 *
 * Source: CLDR territory information, by the library.
 *
 * @param country ISO 3166 code
 */
export function weekStartOf(
  date: PlainDate,
  { country, units }: { readonly country?: string | undefined; readonly units: 'metric' | 'us' },
): PlainDate {
  const first = country === undefined ? (units === 'us' ? 0 : 1) : getWeekStartByRegion(country);
  return addDays(date, -((weekdayOf(date) - first + 7) % 7));
}
