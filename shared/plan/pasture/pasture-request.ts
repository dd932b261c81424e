import type { FarmPicture } from '../../farm/picture.js';
import type { Follower, PastureChoices } from '../../farm/pasture-choices.js';
import type { Tables } from '../../tables/tables.js';
import type { Penned } from './penned.js';

/** What the plan of the pasture looks at: its part of the farm's picture. */
export interface PastureRequest extends Pick<
  FarmPicture,
  'farm' | 'climate' | 'today' | 'paddocks' | 'herds' | 'cows' | 'readings' | 'grazings' | 'mowings'
> {
  readonly tables: Tables;
  readonly followers: readonly Follower[];
  /** Birds that stand in one paddock; left out where there are none. */
  readonly penned?: readonly Penned[];
  readonly choices: PastureChoices;
}
