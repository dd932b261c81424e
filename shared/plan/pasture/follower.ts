import { addDays } from '../../calendar/plain-date.js';
import type { Herd } from '../../farm/herd.js';
import type { Follower } from '../../farm/pasture-choices.js';
import { birdsOutdoors, type OwnLife } from './birds-outdoors.js';

/**
 * The birds of a batch as followers of a herd, from their move outdoors to their last day;
 * undefined when they never move out.
 */
export function followerOf(herd: Herd, own: OwnLife): Follower | undefined {
  const birds = birdsOutdoors(own);
  if (!birds) return undefined;
  const { name, from, leaveOn, nitrogenKgPerDay, phosphorusKgPerDay, rows } = birds;
  const { birdsBehind } = own.tables.pasture;
  return {
    herdId: herd.id,
    ...{ name, from, to: addDays(leaveOn, -1) },
    lagDays: herd.followDays ?? birdsBehind.lagDays,
    ...{ nitrogenKgPerDay, phosphorusKgPerDay },
    rows: [...rows, ...(herd.followDays === undefined ? [birdsBehind] : [])],
  };
}
