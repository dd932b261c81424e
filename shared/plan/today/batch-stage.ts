import type { PlainDate } from '../../calendar/plain-date.js';
import type { BatchPlan } from '../batch-plan.js';

/** Where a batch stands in its life. */
export type BatchStage = 'coming' | 'eggs' | 'brooder' | 'out';

/** Where a batch is on a day by its plan. */
export function stageOf(plan: BatchPlan, today: PlainDate): BatchStage {
  if (today < plan.arrivalDate) {
    const set = plan.tasks.events.find(({ kind }) => kind === 'eggs-set');
    return set && set.date <= today ? 'eggs' : 'coming';
  }
  const out = plan.outdoors.moveOut?.value;
  return out === undefined || today < String(out) ? 'brooder' : 'out';
}
