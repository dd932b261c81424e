import { addDays, type PlainDate } from '../calendar/plain-date.js';
import type { FarmPicture } from '../farm/picture.js';
import type { Tables } from '../tables/tables.js';
import type { BatchPlan } from './batch-plan.js';

type Asked = Pick<FarmPicture, 'today' | 'progress' | 'weighings'> & { readonly tables: Tables };

/**
 * Whether nothing at all was told of meat birds that should have been processed so long since that
 * nobody is asked about that any more. Silence is no slaughter: it is asked whether they came, and
 * nothing of what their plan has after that is taken to have happened.
 */
export function isAllUntold(
  { id, plan }: { readonly id: string; readonly plan: BatchPlan },
  { today, progress, weighings, tables }: Asked,
): boolean {
  if (plan.purpose !== 'meat' || !plan.leaving || plan.birds.counted) return false;
  const { leavingAskedDays } = tables.judgements.alarms;
  if (today <= addDays(lastDayOf(plan.leaving), leavingAskedDays.value)) return false;
  if (weighings.some(({ batchId }) => batchId === id)) return false;
  const ofThem = new Set(
    plan.tasks.tasks
      .filter(({ start }) => plan.arrivalDate <= start)
      .map((task) => `batch/${id}/${task.id}`),
  );
  return !progress.some(({ key, doneOn }) => doneOn !== undefined && ofThem.has(key));
}

const lastDayOf = ({ on }: NonNullable<BatchPlan['leaving']>): PlainDate => String(on.value);
