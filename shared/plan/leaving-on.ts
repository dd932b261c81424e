import { daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { Batch } from '../farm/batch.js';
import type { BatchPlan } from './batch-plan.js';

/**
 * A batch that leaves on a day: a slot that is booked moves as such; without one it is their age that does,
 * as a slot says that the processor was asked.
 */
export function leavingOn<Row extends Batch>(
  batch: Row,
  { hatchDate }: Pick<BatchPlan, 'hatchDate'>,
  on: PlainDate,
): Row {
  if (batch.slotDate !== undefined) return { ...batch, slotDate: on };
  const { targetLiveKg: _weight, processingWeekday: _weekday, ...rest } = batch;
  return { ...rest, leaveAgeDays: daysBetween(hatchDate, on) } as Row;
}
