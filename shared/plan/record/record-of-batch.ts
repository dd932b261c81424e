import { animalPicture, type AnimalPicture, type FarmPicture } from '../../farm/picture.js';
import type { ToldFact } from '../../farm/told-fact.js';
import { FieldError } from '../../problems/field-problem.js';
import type { Tables } from '../../tables/tables.js';
import { planBatch } from '../batch-plan.js';
import { howItWent, type HowItWent } from './how-it-went.js';

/** How every batch went that has come, the newest first; what cannot be planned is left out. */
export function recordOfBatches(
  picture: FarmPicture,
  tables: Tables,
  facts: readonly ToldFact[],
): HowItWent[] {
  return picture.batches
    .filter(({ arrivalDate }) => arrivalDate <= picture.today)
    .flatMap(({ id }) => {
      try {
        return [recordOfBatch(picture, tables, { batchId: id, facts })];
      } catch (error) {
        if (error instanceof FieldError) return [];
        throw error;
      }
    })
    .sort((a, b) => (a.arrivedOn < b.arrivedOn ? 1 : a.arrivedOn > b.arrivedOn ? -1 : 0));
}

/**
 * How a batch went beside its plan as it was on the day it was to come, by prices of today.
 *
 * @param facts of the farm: of the batch, and what was bought
 * @throws FieldError when the picture has no such batch, or none that can be planned
 */
function recordOfBatch(
  picture: FarmPicture,
  tables: Tables,
  { batchId, facts }: { readonly batchId: string; readonly facts: readonly ToldFact[] },
): HowItWent {
  const plan = planBatch(asOrdered(picture, batchId), tables, batchId);
  return howItWent({ batchId, plan, facts, today: picture.today });
}

/**
 * What the plan of a batch rests on as it was on the day on which it was to come, with nothing told
 * of it: whatever is told of the batch, this stays the same.
 */
export function asOrdered(picture: FarmPicture, of: string): AnimalPicture {
  const batch = picture.batches.find(({ id }) => id === of);
  const isOther = ({ batchId }: { readonly batchId: string }): boolean => batchId !== of;
  return {
    ...animalPicture(picture),
    today: batch && batch.arrivalDate < picture.today ? batch.arrivalDate : picture.today,
    headChanges: picture.headChanges.filter(isOther),
    weighings: picture.weighings.filter(isOther),
    eggCounts: picture.eggCounts.filter(isOther),
    feedOpenings: (picture.feedOpenings ?? []).filter(isOther),
    heatOuts: (picture.heatOuts ?? []).filter(isOther),
  };
}
