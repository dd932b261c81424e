import type { AnimalPicture } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import { planBatch, type BatchPlan } from '../batch-plan.js';
import { batchContext } from '../batch-request.js';
import { breakEvenOf, type BreakEven } from './break-even.js';
import type { Fetching } from './fetching.js';
import { layAges, type LayAges } from './lay-ages.js';
import { stopFeeding, type StopPart } from './stop-feeding.js';

/** What a batch must bring, and when it has had enough feed: worked out when somebody asks for it. */
export interface BatchCost {
  readonly name: string;
  readonly breakEven: BreakEven;
  /** Of meat birds that are not gone. */
  readonly stop?: StopPart;
  /** Of hens. */
  readonly layAges?: LayAges;
}

/**
 * @param plan the batch's plan, where it is there already
 * @param fetching what the farm's trips cost; left out, the batch is taken to be fetched for by itself
 * @throws FieldError as `planBatch`
 */
export function batchCost(
  picture: AnimalPicture,
  tables: Tables,
  batchId: string,
  {
    plan = planBatch(picture, tables, batchId),
    fetching,
  }: { readonly plan?: BatchPlan; readonly fetching?: Fetching | undefined } = {},
): BatchCost {
  const context = batchContext(picture, tables, batchId);
  const breakEven = breakEvenOf(context, plan, fetching);
  const stop = stopFeeding(context, plan, breakEven.withHours ?? breakEven.withoutHours);
  const ages = layAges(context, plan);
  return {
    name: plan.name,
    breakEven,
    ...(stop ? { stop } : {}),
    ...(ages ? { layAges: ages } : {}),
  };
}
