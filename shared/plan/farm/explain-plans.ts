import { explain, type Explanation } from '../../formulas/explanation.js';
import { quantitiesIn } from '../../explain/quantities-in.js';
import type { Quantity } from '../../explain/quantity.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import { planBatch, type BatchPlan } from '../batch-plan.js';
import { moveQuantities } from '../pasture/move-quantities.js';
import { planPasture, type PasturePlan } from '../pasture/pasture-plan.js';
import { taskHours } from '../tasks/task-hours.js';

/** Every number of a batch's plan, the hours of its tasks included. */
export const batchQuantities = (plan: BatchPlan, tables: Tables): Quantity[] => [
  ...quantitiesIn(plan),
  ...plan.tasks.tasks.map((task) => taskHours(task, tables)),
];

/** Every number of a pasture's plan, hours of its tasks and those of each move included. */
export const pastureQuantities = (plan: PasturePlan, tables: Tables): Quantity[] => [
  ...quantitiesIn(plan),
  ...plan.tasks.map((task) => taskHours(task, tables)),
  ...plan.moves.flatMap((move) => moveQuantities(plan, move)),
];

/** Every number of a batch's plan, opened to its formula, inputs and sources, in the farm's units. */
export const explainBatch = (
  picture: FarmPicture,
  tables: Tables,
  batchId: string,
): Explanation[] =>
  batchQuantities(planBatch(picture, tables, batchId), tables).map((each) =>
    explain(each, tables, picture.farm),
  );

/** The same for the plan of the pasture. */
export const explainPasture = (picture: FarmPicture, tables: Tables): Explanation[] =>
  pastureQuantities(planPasture(picture, tables), tables).map((each) =>
    explain(each, tables, picture.farm),
  );
