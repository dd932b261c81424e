import type { PlainDate } from '../calendar/plain-date.js';
import type { Batch, Occupancy } from '../farm/batch.js';
import type { Facility } from '../farm/facility.js';
import type { Farm, Person } from '../farm/farm.js';
import type { Tables } from '../tables/tables.js';
import type { Climate } from '../weather/climate.js';

/** Everything a plan is made from. The core asks nobody: today and the tables are handed in. */
export interface PlanRequest {
  readonly farm: Farm;
  readonly climate: Climate;
  readonly facilities: readonly Facility[];
  readonly people: readonly Person[];
  readonly batch: Batch;
  /** What other batches of the farm hold on to. */
  readonly occupied: readonly Occupancy[];
  readonly tables: Tables;
  readonly today: PlainDate;
  /** When given, the plan says which tasks moved since that arrival date. */
  readonly previousArrivalDate?: PlainDate;
}
