import type { Herd } from '../../farm/herd.js';
import type { PlanContext } from '../context.js';
import type { Follower } from '../../farm/pasture-choices.js';

/** Of a batch's context what no neighbor of it changes. */
type OwnLife = Pick<PlanContext, 'batch' | 'life' | 'moveOutDay' | 'dateOf' | 'tables'>;

/**
 * The birds of a batch as followers of a herd, from their move outdoors to their last day;
 * undefined when they never move out.
 */
export function followerOf(
  herd: Herd,
  { batch, life, moveOutDay, dateOf, tables }: OwnLife,
): Follower | undefined {
  if (moveOutDay === undefined) return undefined;
  const last = life.days - 1;
  const days = last - moveOutDay;
  if (days < 1) return undefined;
  const manure = tables.manure[batch.purpose];
  const { nKgPerDayPerKgLive, pKgPerDayPerKgLive } = manure;
  const { birdsBehind } = tables.pasture;
  let liveKgDays = 0;
  for (let i = moveOutDay; i < last; i++) liveKgDays += life.aliveAll[i]! * life.meanWeightKg[i]!;
  const meanLiveKg = liveKgDays / days;
  return {
    herdId: herd.id,
    name: batch.name,
    from: dateOf(moveOutDay),
    to: dateOf(last - 1),
    lagDays: herd.followDays ?? birdsBehind.lagDays,
    nitrogenKgPerDay: meanLiveKg * nKgPerDayPerKgLive,
    phosphorusKgPerDay: meanLiveKg * pKgPerDayPerKgLive,
    rows: [
      ...[manure, life.losses],
      ...life.weightRows,
      ...(herd.followDays === undefined ? [birdsBehind] : []),
    ],
  };
}
