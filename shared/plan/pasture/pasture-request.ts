import type { PlainDate } from '../../calendar/plain-date.js';
import type { Farm } from '../../farm/farm.js';
import type { Herd } from '../../farm/herd.js';
import type { GrassReading, Paddock } from '../../farm/paddock.js';
import type { Follower, PastureChoices } from '../../farm/pasture-choices.js';
import type { Tables } from '../../tables/tables.js';
import type { Climate } from '../../weather/climate.js';

export type { Follower, PastureChoices };

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
