import { addDays, weekdayOf } from '../calendar/plain-date.js';
import type { FarmPicture } from '../farm/picture.js';
import type { Tables } from '../tables/tables.js';
import { findArrivals } from './arrival-finder.js';

const YEAR_DAYS = 363;

/**
 * What speaks most for the week in which a batch comes against the other weeks of the year from
 * today on, in words; undefined where no reason takes more off those than off this one.
 *
 * @throws FieldError as `findArrivals` does
 */
export function whyBest(picture: FarmPicture, tables: Tables, batchId: string): string | undefined {
  const { arrivalDate } = picture.batches.find(({ id }) => id === batchId)!;
  const weekday = weekdayOf(arrivalDate);
  const [own] = findArrivals(picture, tables, batchId, {
    from: arrivalDate,
    to: arrivalDate,
    weekday,
  });
  if (!own) return undefined;
  const from = addDays(picture.today, tables.judgements.arrival.usualLeadDays.value);
  const weeks = findArrivals(picture, tables, batchId, { from, to: addDays(from, YEAR_DAYS) });
  const pointsOf = ({ reasons }: typeof own, code: string): number =>
    reasons.reduce((sum, each) => (each.code === code ? sum + each.points : sum), 0);
  const [most] = own.reasons
    .map(({ code, text }) => ({
      text,
      gain:
        weeks.reduce((sum, week) => sum + pointsOf(week, code), 0) / weeks.length -
        pointsOf(own, code),
    }))
    .sort((a, b) => b.gain - a.gain);
  return most && 0 < most.gain ? most.text : undefined;
}
