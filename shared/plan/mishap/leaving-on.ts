import { daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { NamedBatch } from '../../farm/picture.js';
import type { BatchPlan } from '../batch-plan.js';

/** A batch that leaves on a day: a processor's slot moves as such; at home it is their age that does. */
export function leavingOn(batch: NamedBatch, plan: BatchPlan, on: PlainDate): NamedBatch {
  if (batch.processing === 'hired' || batch.slotDate !== undefined) {
    return { ...batch, slotDate: on };
  }
  const { targetLiveKg: _weight, processingWeekday: _weekday, ...rest } = batch;
  return { ...rest, leaveAgeDays: daysBetween(plan.hatchDate, on) };
}
