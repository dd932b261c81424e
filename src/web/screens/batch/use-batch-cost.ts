import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { batchCost, type BatchCost } from '../../../../shared/plan/cost/batch-cost.js';
import type { Fetching } from '../../../../shared/plan/cost/fetching.js';
import { useFeedYear } from '../../api/feed-queries.js';
import type { AskedBatch } from './use-plan.js';

const known = new WeakMap<
  BatchPlan,
  { readonly fetching: Fetching | undefined; readonly cost: BatchCost }
>();

/** What is worked out of a plan once somebody opens it, and once for all that show it. */
export function useBatchCost(
  plan: BatchPlan,
  { farm, picture, tables, batch }: AskedBatch,
): BatchCost | undefined {
  const { data, isLoading } = useFeedYear(farm.id);
  if (isLoading) return undefined;
  const fetching = data?.fetching;
  let of = known.get(plan);
  if (of?.fetching !== fetching || !of) {
    of = { fetching, cost: batchCost(picture, tables, batch.id, { plan, fetching }) };
    known.set(plan, of);
  }
  return of.cost;
}
