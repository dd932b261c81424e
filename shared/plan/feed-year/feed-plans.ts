import type { FarmPicture } from '../../farm/picture.js';
import { FieldError } from '../../problems/field-problem.js';
import type { Tables } from '../../tables/tables.js';
import { planBatch, type BatchPlan } from '../batch-plan.js';

/** One batch planned three times, each time with more of what was told of it. */
export interface FeedPlans {
  /** As it was on the day it came, nothing told. */
  readonly asOrdered: BatchPlan;
  /** With the birds that were counted. */
  readonly withHeads: BatchPlan;
  /** With their weights and eggs as well, but not by the bags opened. */
  readonly withWeights: BatchPlan;
}

/** Those plans; undefined where one cannot be made. */
export function feedPlans(
  picture: FarmPicture,
  tables: Tables,
  batchId: string,
): FeedPlans | undefined {
  const isOther = (fact: { readonly batchId: string }): boolean => fact.batchId !== batchId;
  const noBags: FarmPicture = {
    ...picture,
    feedOpenings: (picture.feedOpenings ?? []).filter(isOther),
  };
  const headsOnly: FarmPicture = {
    ...noBags,
    weighings: picture.weighings.filter(isOther),
    eggCounts: picture.eggCounts.filter(isOther),
  };
  const nothing: FarmPicture = {
    ...headsOnly,
    headChanges: picture.headChanges.filter(isOther),
  };
  try {
    return {
      asOrdered: planBatch(nothing, tables, batchId),
      withHeads: planBatch(headsOnly, tables, batchId),
      withWeights: planBatch(noBags, tables, batchId),
    };
  } catch (error) {
    if (error instanceof FieldError) return undefined;
    throw error;
  }
}
