import type { Sourced } from '../../explain/formula.js';
import type { PlainDate } from '../../calendar/plain-date.js';
import type { Farm } from '../../farm/farm.js';
import type { Herd } from '../../farm/herd.js';
import type { GrassReading, Paddock } from '../../farm/paddock.js';
import type { Tables } from '../../tables/tables.js';
import type { Climate } from '../../weather/climate.js';

/** Birds in moved pens or a mobile coop that follow a herd. */
export interface Follower {
  readonly herdId: string;
  readonly name: string;
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly lagDays: number;
  readonly nitrogenKgPerDay: number;
  readonly phosphorusKgPerDay: number;
  /** What these rest on; left out where somebody gave them. */
  readonly rows?: readonly Sourced[];
}

/** The household's choices for the whole pasture; what is left out takes the stated default. */
export interface PastureChoices {
  /** First and last day of the plan; by default the rest of this grazing season, or the next. */
  readonly from?: PlainDate;
  readonly to?: PlainDate;
  /** Rain of each month as a share of the usual, January first: 1 is usual. */
  readonly rainShareByMonth?: readonly number[];
  /** Rest of each paddock over the table's: 1.5 is half as long again. */
  readonly restFactor?: number;
  /** Paddocks shut in late summer, so that their grass stands when growth is over. */
  readonly keepForAutumnIds?: readonly string[];
  readonly feedingId?: string;
  readonly storingId?: string;
  readonly baleId?: string;
  readonly hayInStoreKg?: number;
  /** Hours the trough takes to refill for a day's water. */
  readonly refillH?: number;
}

/** All that a pasture plan depends on. */
export interface PastureRequest {
  readonly farm: Farm;
  readonly climate: Climate;
  readonly tables: Tables;
  readonly today: PlainDate;
  readonly paddocks: readonly Paddock[];
  readonly herds: readonly Herd[];
  readonly readings: readonly GrassReading[];
  readonly followers: readonly Follower[];
  readonly choices: PastureChoices;
}
