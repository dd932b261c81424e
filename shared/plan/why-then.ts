import { addDays, weekdayOf } from '../calendar/plain-date.js';
import type { FarmPicture } from '../farm/picture.js';
import type { Tables } from '../tables/tables.js';
import { findArrivals } from './arrival-finder.js';
import { SEEN_BESIDE_DAYS, weeksBeside, type WeekBeside } from './weeks-beside.js';

/**
 * Why a batch comes when it does: what speaks against the weeks before and after, which a reason of
 * its own week does not say (that of which it has least may still be against it, and a box that is
 * large enough decides nothing). Undefined of birds that are here, for which nobody chose a week, and
 * of a batch without a plan.
 *
 * @throws FieldError as `findArrivals` does
 */
export function whyThen(
  picture: FarmPicture,
  tables: Tables,
  batchId: string,
): WeekBeside[] | undefined {
  const { today, batches } = picture;
  const { arrivalDate } = batches.find(({ id }) => id === batchId)!;
  if (arrivalDate <= today) return undefined;
  const weekday = weekdayOf(arrivalDate);
  const [own] = findArrivals(picture, tables, batchId, {
    from: arrivalDate,
    to: arrivalDate,
    weekday,
  });
  if (!own) return undefined;
  const soonest = addDays(today, tables.judgements.arrival.usualLeadDays.value);
  const [from] = [soonest, addDays(arrivalDate, -SEEN_BESIDE_DAYS)].sort().slice(-1);
  const to = addDays(arrivalDate, SEEN_BESIDE_DAYS);
  return weeksBeside(findArrivals(picture, tables, batchId, { from: from!, to }), own);
}
