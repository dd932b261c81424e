import type { PlainDate } from '../../calendar/plain-date.js';
import { nameAmong } from '../../farm/batch-names.js';
import { expectedBirds, lastLeft } from '../../farm/head-count.js';
import type { AnimalPicture } from '../../farm/picture.js';
import { FieldError } from '../../problems/field-problem.js';
import type { Tables } from '../../tables/tables.js';
import { planBatch } from '../batch-plan.js';
import { isHistory } from '../planning-day.js';
import { planPasture, type PasturePlan } from '../pasture/pasture-plan.js';
import type { PlannedBatch } from '../work/dated-work.js';
import type { FeedTrip } from '../feed-year/feed-trips.js';
import { toldOfBatch } from '../told-of-batch.js';
import { hasGrass } from './has-grass.js';

/** The plans of a farm's animals: what the household's work hangs on. */
export interface AnimalPlans {
  readonly batches: readonly PlannedBatch[];
  /** Left out where there is no grass, or where it cannot be planned. */
  readonly pasture?: PasturePlan;
  /** Batches and herds of which no plan can be made, by name. */
  readonly unplanned: readonly string[];
  /** Trips for their feed, where they are known already. */
  readonly trips?: readonly FeedTrip[];
}

/**
 * Plans every batch of a farm that is not history or all gone, and its pasture. What cannot be planned leaves the rest as it is, and
 * is named.
 *
 * @param known the plan of the same picture's pasture, where it is there already
 */
export function planAnimals(
  picture: AnimalPicture,
  tables: Tables,
  known?: PasturePlan,
): AnimalPlans {
  const { herds } = picture;
  const unplanned: string[] = [];
  const current = picture.batches.filter((batch) => !isHistory(batch, picture.today));
  const batches = current.flatMap((batch): PlannedBatch[] => {
    const { id } = batch;
    const name = nameAmong(batch, current);
    const { headChanges } = toldOfBatch(picture, id);
    if (lastLeft(headChanges, expectedBirds(batch)) !== undefined) return [];
    const plan = orNothing(() => planBatch(picture, tables, id));
    if (!plan) unplanned.push(name);
    return plan ? [{ id, name, plan }] : [];
  });
  const pasture =
    known ?? (hasGrass(picture) ? orNothing(() => planPasture(picture, tables)) : undefined);
  if (hasGrass(picture) && !pasture) unplanned.push(...herds.map(({ name }) => name));
  return { batches, ...(pasture ? { pasture } : {}), unplanned };
}

/** Plans of meat birds that were told to be processed, all gone since a day: they are in the freezer. */
export function goneSince(
  picture: AnimalPicture,
  tables: Tables,
  since: PlainDate,
): PlannedBatch[] {
  return picture.batches.flatMap((batch): PlannedBatch[] => {
    const { id, purpose } = batch;
    if (purpose !== 'meat' || isHistory(batch, picture.today)) return [];
    const { headChanges } = toldOfBatch(picture, id);
    const left = lastLeft(headChanges, expectedBirds(batch));
    if (left === undefined || left < since) return [];
    if (!headChanges.some(({ change }) => change === 'processed')) return [];
    const plan = orNothing(() => planBatch(picture, tables, id));
    return plan ? [{ id, name: nameAmong(batch, picture.batches), plan }] : [];
  });
}

/** What is planned, or nothing where it cannot be. */
export function orNothing<T>(plan: () => T): T | undefined {
  try {
    return plan();
  } catch (error) {
    if (error instanceof FieldError) return undefined;
    throw error;
  }
}
