import { addDays } from '../../calendar/plain-date.js';
import { templateOf } from '../tasks/task-hours.js';
import type { Task } from '../tasks/task.js';
import type { WorkRequest } from './work-request.js';

/**
 * Whether work of which the time is over is asked after: the last plan had it, and nobody said what
 * became of it. What no plan had was done before the farm was planned, and what was told to have come
 * leaves nothing to ask.
 */
export function isAskedAfter(
  { kept, today, tables }: Pick<WorkRequest, 'kept' | 'today' | 'tables'>,
  task: Task,
  key: string,
): boolean {
  if (kept?.jobs[key] === undefined || task.isSettled || task.onDemand) return false;
  if (OF_THE_EGGS.has(task.event) || templateOf(tables, task).lapses) return false;
  const last = task.noUseAfter ?? addDays(task.end, task.spareDays + (task.mayFollowDays ?? 0));
  // Told onto grass today, they are out today.
  if (last < addDays(today, -tables.judgements.work.askedAfterDays.value)) return false;
  return last < today || (task.isOver === true && last === today);
}

/** Chicks that are there were hatched. */
const OF_THE_EGGS = new Set<Task['event']>(['eggs-set', 'candle', 'lockdown']);
