import type { BatchPlan } from '../batch-plan.js';

const LOOKED_AT = [
  ...(['name', 'purpose', 'strain', 'arrivalDate', 'hatchDate'] as const),
  ...(['birds', 'feed', 'leaving', 'laying', 'bill', 'daily'] as const),
] as const satisfies readonly (keyof BatchPlan)[];

/** What a look back needs of a plan. */
export type PlannedOfBatch = Pick<BatchPlan, (typeof LOOKED_AT)[number]>;

/** The part of a plan that a look back needs: a third of it. */
export const plannedOf = (plan: BatchPlan): PlannedOfBatch =>
  Object.fromEntries(
    LOOKED_AT.flatMap((part) => (plan[part] === undefined ? [] : [[part, plan[part]]])),
  ) as unknown as PlannedOfBatch;
