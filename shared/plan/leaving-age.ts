import { addDays, daysBetween, weekdayOf } from '../calendar/plain-date.js';
import type { Batch } from '../farm/batch.js';
import type { Strain } from '../tables/bird-tables.js';

/**
 * Age at which meat birds leave, days from hatch: with the target weight, as chosen, or as is usual
 * for the strain. Where a weekday is wished it is the nearest of these, or the first one from the
 * day on which the target weight is reached. A slot that is booked decides alone.
 *
 * @param targetReachedAgeDays undefined when there is no target weight, or it is never reached
 */
export function leavingAgeDays(
  batch: Pick<
    Batch,
    'arrivalDate' | 'hatchToArrivalDays' | 'leaveAgeDays' | 'processingWeekday' | 'slotDate'
  >,
  strain: Strain,
  targetReachedAgeDays: number | undefined,
): number {
  const { arrivalDate, hatchToArrivalDays, slotDate } = batch;
  if (slotDate !== undefined) return daysBetween(arrivalDate, slotDate) + hatchToArrivalDays;
  const age = targetReachedAgeDays ?? batch.leaveAgeDays ?? strain.leave.ageDays;
  const { processingWeekday } = batch;
  if (processingWeekday === undefined) return age;
  const weekday = weekdayOf(addDays(batch.arrivalDate, age - batch.hatchToArrivalDays));
  const ahead = (processingWeekday - weekday + 7) % 7;
  return targetReachedAgeDays === undefined && NEARER_BACK_FROM <= ahead
    ? age + ahead - 7
    : age + ahead;
}

/** Days ahead from which the weekday before is the nearer one. */
const NEARER_BACK_FROM = 4;
