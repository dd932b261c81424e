import { daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { Batch } from '../farm/batch.js';
import type { HeadChange } from '../farm/head-count.js';
import { AWAITED_DAYS } from './awaited.js';

/** The day of a batch in a list, and what it is. */
export interface ArrivalSaid {
  readonly what: 'Came' | 'Expected' | 'Arrive';
  readonly on: PlainDate;
}

/** When birds came as it was told; the day of the plan is no news until somebody tells it. */
export function arrivalSaid(
  { id, arrivalDate }: Pick<Batch, 'id' | 'arrivalDate'>,
  changes: readonly HeadChange[],
  today: PlainDate,
): ArrivalSaid {
  const told = changes.filter(({ batchId }) => batchId === id);
  const came = told.findLast(({ change }) => change === 'arrived');
  if (came) return { what: 'Came', on: came.date };
  if (today < arrivalDate) return { what: 'Arrive', on: arrivalDate };
  const isAwaited = told.length === 0 && daysBetween(arrivalDate, today) <= AWAITED_DAYS;
  return { what: isAwaited ? 'Expected' : 'Came', on: arrivalDate };
}
