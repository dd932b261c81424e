import type { PlainDate } from '../calendar/plain-date.js';
import type { BatchPlan } from './batch-plan.js';
import { ORDERS, TAKEN_AS_ORDERED } from './past-tasks.js';

/** An order that is taken as made, by the key of its work, with the last day that there was for it. */
export interface TakenOrder {
  readonly batchId: string;
  readonly key: string;
  readonly latest: PlainDate;
}

/** Orders of birds to come that are taken as made because it is too late for another, told or not. */
export const takenOrders = (
  batches: readonly { readonly id: string; readonly plan: BatchPlan }[],
): TakenOrder[] =>
  batches.flatMap(({ id, plan }) => {
    const order = plan.tasks.tasks.find(({ templateId }) => ORDERS.has(templateId));
    const isTaken = plan.issues.some(({ code }) => code === TAKEN_AS_ORDERED);
    return order && isTaken
      ? [{ batchId: id, key: `batch/${id}/${order.id}`, latest: order.latestStart }]
      : [];
  });
