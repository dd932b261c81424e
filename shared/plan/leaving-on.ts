import { daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { Batch } from '../farm/batch.js';
import type { BatchPlan } from './batch-plan.js';

/** A batch that leaves on a day: a processor's slot moves as such; at home it is their age that does. */
export function leavingOn<Row extends Batch>(
  batch: Row,
  { hatchDate }: Pick<BatchPlan, 'hatchDate'>,
  on: PlainDate,
): Row {
  if (batch.processing === 'hired' || batch.slotDate !== undefined) {
    return { ...batch, slotDate: on };
  }
  const { targetLiveKg: _weight, processingWeekday: _weekday, ...rest } = batch;
  return { ...rest, leaveAgeDays: daysBetween(hatchDate, on) } as Row;
}
