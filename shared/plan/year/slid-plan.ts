import { withBatch, type FarmPicture } from '../../farm/picture.js';
import { planBatch, type BatchPlan } from '../batch-plan.js';
import { nobodyHome } from '../nobody-home.js';
import { keyDatesOf } from '../tasks/event.js';
import { movedWithEvent } from '../work/hanging-jobs.js';
import { arrivalEffects, type ArrivalEffects } from './arrival-effects.js';
import { batchRow } from './batch-row.js';
import type { YearRow } from './year-row.js';
import { FieldError } from '../../problems/field-problem.js';
import type { Tables } from '../../tables/tables.js';

/** What a slid arrival is planned from. */
export interface Ground {
  readonly picture: FarmPicture;
  readonly tables: Tables;
}

/** An arrival that is being moved: not saved. */
export interface Slid {
  readonly batchId: string;
  readonly arrivalDate: string;
}

/** A batch as it would be, and what that does; or why it cannot come then. */
export type SlidPlan =
  | {
      readonly row: YearRow;
      readonly effects: ArrivalEffects;
      /** Absences that they would be young in. */
      readonly nobodyHome: readonly string[];
      /** The household's own jobs that are tied to its dates, with the days they would be due. */
      readonly jobs: readonly {
        readonly name: string;
        readonly from: string;
        readonly to: string;
      }[];
    }
  | { readonly refused: FieldError };

/** Plans a batch on another arrival date, with the core that the service plans with: some milliseconds. */
export function slidPlan({ picture, tables }: Ground, { batchId, arrivalDate }: Slid): SlidPlan {
  const batch = picture.batches.find(({ id }) => id === batchId)!;
  try {
    const now = planNow(picture, tables, batchId);
    const then = planBatch(withBatch(picture, { ...batch, arrivalDate }), tables, batchId);
    return {
      row: batchRow(batchId, then),
      effects: arrivalEffects(now, then),
      nobodyHome: nobodyHome(picture, then),
      jobs: tiedJobs(picture, batchId, then),
    };
  } catch (error) {
    if (error instanceof FieldError) return { refused: error };
    throw error;
  }
}

const known = new WeakMap<FarmPicture, Map<string, BatchPlan>>();

/** The plan as it is stays the same for every day the arrival passes over. */
function planNow(picture: FarmPicture, tables: Tables, batchId: string): BatchPlan {
  let plans = known.get(picture);
  if (!plans) known.set(picture, (plans = new Map()));
  let plan = plans.get(batchId);
  if (!plan) plans.set(batchId, (plan = planBatch(picture, tables, batchId)));
  return plan;
}

function tiedJobs({ jobs }: FarmPicture, id: string, { name, tasks }: BatchPlan) {
  const events = keyDatesOf({ id, name }, tasks.events);
  return jobs
    .map((job) => ({ name: job.name, from: job.dueOn, to: movedWithEvent(job, events).dueOn }))
    .filter(({ from, to }) => from !== to);
}
