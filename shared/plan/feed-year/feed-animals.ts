import type { PasturePlan } from '../pasture/pasture-plan.js';
import type { PlannedBatch } from '../work/dated-work.js';

/** The plans of a farm's animals, by which they are fed. */
export interface FedAnimals {
  readonly batches: readonly PlannedBatch[];
  /** Left out where there is no grass, or where it cannot be planned. */
  readonly pasture?: PasturePlan;
  /** Batches and herds of which no plan can be made, by name. */
  readonly unplanned: readonly string[];
}
