import type { Sourced } from '../../explain/formula.js';
import type { PlainDate } from '../../calendar/plain-date.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { PastureChoices } from '../../farm/pasture-choices.js';
import type { Tables } from '../../tables/tables.js';

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

/** What the plan of the pasture looks at: its part of the farm's picture. */
export interface PastureRequest extends Pick<
  FarmPicture,
  'farm' | 'climate' | 'today' | 'paddocks' | 'herds' | 'readings'
> {
  readonly tables: Tables;
  readonly followers: readonly Follower[];
  readonly choices: PastureChoices;
}
