import type { PlainDate } from '../calendar/plain-date.js';
import type { Batch } from '../farm/batch.js';
import type { Occupancy } from '../farm/occupancy.js';
import type { EggCount } from '../farm/egg-count.js';
import type { FeedOpening } from '../farm/feed-opening.js';
import type { HeatOut } from '../farm/heat-out.js';
import type { HeadChange } from '../farm/head-count.js';
import type { Weighing } from '../farm/weighing.js';
import type { FarmPicture } from '../farm/picture.js';
import type { Tables } from '../tables/tables.js';
import type { Packed } from './freezer-account.js';

/** What another flock of layers of the farm gives the household's table. */
export interface OtherFlock {
  readonly arrivalDate: PlainDate;
  /** Eggs of the flock by day after its arrival, over the laying years that are counted on. */
  readonly eggs: Float64Array;
  /** Eggs that the household wants in a week, where it was said of that flock. */
  readonly eggsWantedPerWeek?: number;
}

/** Hours of chores by date. */
export type ChoreHours = (date: PlainDate) => number;

/** What the plan of one batch looks at: its part of the farm's picture. */
export interface PlanRequest extends Pick<
  FarmPicture,
  'farm' | 'climate' | 'facilities' | 'products' | 'people' | 'publicHolidays' | 'today'
> {
  /** Days on which others are in charge, as far as there are any. */
  readonly handovers?: FarmPicture['handovers'];
  readonly batch: Batch;
  /** Whether hens of an earlier batch are there that new pullets come to. */
  readonly hasOlderFlock?: boolean;
  /** Brooders, pens and coops that batches which come before this one are in; none when left out. */
  readonly usedBefore?: readonly string[];
  /** Hours of chores that other batches and herds ask for; none when left out. */
  readonly choresOfOthers?: ChoreHours;
  /** What other batches of the farm hold on to. */
  readonly occupied: readonly Occupancy[];
  /** What other batches bring to freezers. */
  readonly packed: readonly Packed[];
  /** What other layers of the farm lay; none when left out. */
  readonly otherFlocks?: readonly OtherFlock[];
  /** What was told of the heat of its brooder, the oldest first; nothing when left out. */
  readonly heatOuts?: readonly HeatOut[];
  /** What changed how many birds of this batch there are; nothing when left out. */
  readonly headChanges?: readonly HeadChange[];
  /** Weighings of this batch; none when left out. */
  readonly weighings?: readonly Weighing[];
  /** Eggs of this batch that were counted; none when left out. */
  readonly eggCounts?: readonly EggCount[];
  /** Bags opened for this batch; none when left out. */
  readonly feedOpenings?: readonly FeedOpening[];
  readonly tables: Tables;
  /** When given, the plan says which tasks moved since that arrival date. */
  readonly previousArrivalDate?: PlainDate;
}
