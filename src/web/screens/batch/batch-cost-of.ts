import { batchCost, type BatchCost } from '../../../../shared/plan/cost/batch-cost.js';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import type { AskedBatch } from './use-plan.js';

const known = new WeakMap<BatchPlan, BatchCost>();

/** What is worked out of a plan once somebody opens it, and once for all that show it. */
export function batchCostOf(plan: BatchPlan, { picture, tables, batch }: AskedBatch): BatchCost {
  let cost = known.get(plan);
  if (!cost) known.set(plan, (cost = batchCost(picture, tables, batch.id, plan)));
  return cost;
}
