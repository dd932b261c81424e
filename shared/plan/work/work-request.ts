import type { PlainDate } from '../../calendar/plain-date.js';
import type { Farm, Person } from '../../farm/farm.js';
import type { GroundCheck } from '../../farm/ground-check.js';
import type { Handover } from '../../farm/handover.js';
import type { OwnJob, Progress } from '../../farm/job.js';
import type { PublicHoliday } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import type { Climate } from '../../weather/climate.js';
import type { BatchPlan } from '../batch-plan.js';
import type { KeyDate } from '../tasks/event.js';
import type { Task } from '../tasks/task.js';
import type { HerdRound } from './herd-round.js';
import type { KeptPlan } from '../../farm/kept-plan.js';

/** Dated work of one batch or herd, as its own plan gives it. */
export interface DatedWork {
  readonly id: string;
  readonly name: string;
  readonly kind: 'batch' | 'herd';
  readonly tasks: readonly Task[];
  readonly events: readonly KeyDate[];
  /** Of a herd: somebody looks at it every day, whatever its tasks say. */
  readonly round?: HerdRound;
  /** Of a batch: how long its drinkers last. */
  readonly birds?: BatchPlan;
}

/** All that the plan of a household's work depends on. */
export interface WorkRequest {
  readonly farm: Farm;
  readonly climate: Climate;
  readonly tables: Tables;
  readonly today: PlainDate;
  /** Left out where they are not known. */
  readonly publicHolidays?: readonly PublicHoliday[];
  readonly people: readonly Person[];
  readonly work: readonly DatedWork[];
  /** Batches and herds of which no plan can be made, so that their work is missing here. */
  readonly unplanned: readonly string[];
  readonly ownJobs: readonly OwnJob[];
  readonly progress: readonly Progress[];
  /** What the household found when it looked at the ground. */
  readonly groundChecks: readonly GroundCheck[];
  /** The last plan there was, so that as little as possible moves. */
  readonly kept?: KeptPlan;
  /** The last plan of a day before today, to say what changed since. */
  readonly before?: KeptPlan;
  /** Days on which only a sitter has hours. */
  readonly handovers: readonly Handover[];
  readonly seed: number;
}
