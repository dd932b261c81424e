import type { BatchPlan } from '../batch-plan.js';
import type { Task } from '../tasks/task.js';
import { ARRANGING, BOOKING } from '../past-tasks.js';
import { orderOf } from './life-line.js';

/** Open work that is settled long before its event and cannot be made up for. */
export interface LongLead {
  readonly task: Task;
  /** In a few words, and in one: beside the number of its day. */
  readonly words: string;
  readonly mark: string;
}

/** What is booked and ordered for a batch, as far as it is open. */
export function longLeads(plan: BatchPlan): LongLead[] {
  const { birds, tasks, words } = plan;
  const order = orderOf(plan);
  const open = (id: string): Task | undefined =>
    tasks.tasks.find(({ templateId, isOver }) => templateId === id && isOver !== true);
  const of = (task: Task | undefined, said: string, mark: string): LongLead[] =>
    task ? [{ task, words: said, mark }] : [];
  return [
    ...of(open(BOOKING), 'book the processor’s slot', 'book'),
    ...of(order, `order ${birds.chicksPlaced.value} ${words.young}`, 'order'),
    ...of(open(ARRANGING), 'book a slot or find helpers', 'book'),
  ];
}
