import type { PlainDate } from '../../calendar/plain-date.js';
import type { Farm, Person } from '../../farm/farm.js';
import type { OwnJob, WorkMark } from '../../farm/job.js';
import type { WorkPlan } from '../../schedule/work.js';
import type { Tables } from '../../tables/tables.js';
import type { Climate } from '../../weather/climate.js';
import type { HerdTask } from '../pasture/herd-tasks.js';
import type { PlannedTask } from '../tasks.js';

/** Dated work of one batch or herd, as its own plan gives it. */
export interface DatedWork {
  readonly id: string;
  readonly name: string;
  readonly kind: 'batch' | 'herd';
  readonly tasks: readonly (PlannedTask | HerdTask)[];
}

/** All that the plan of a household's work depends on. */
export interface SeasonRequest {
  readonly farm: Farm;
  readonly climate: Climate;
  readonly tables: Tables;
  readonly today: PlainDate;
  readonly people: readonly Person[];
  readonly work: readonly DatedWork[];
  /** Batches and herds of which no plan can be made, so that their work is missing here. */
  readonly unplanned: readonly string[];
  readonly ownJobs: readonly OwnJob[];
  readonly marks: readonly WorkMark[];
  /** What was planned before, by key of the work, so that as little as possible moves. */
  readonly earlier?: Readonly<Record<string, WorkPlan[number]>>;
  readonly seed: number;
}
