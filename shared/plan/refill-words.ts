import { daysHeldSaid } from '../poultry/refills.js';
import type { Round } from '../tables/task-template.js';
import { listed } from '../units/listed.js';

/**
 * “Drinkers (20 L) last a day and a half on a hot day: fill every morning.”
 *
 * @param at words that say of which day it is; left out, of the day it is read
 */
export function refillWords({
  kind,
  share,
  lastsH,
  rounds,
  holds,
  isAssumed,
  at = '',
}: {
  kind: 'drinkers' | 'feeders';
  share: number;
  lastsH: number;
  rounds: readonly Round[];
  holds: string;
  isAssumed: boolean;
  at?: string;
}): string {
  const isWater = kind === 'drinkers';
  const lasts =
    lastsH === Infinity ? daysHeldSaid(share) : `about ${Math.max(1, Math.floor(lastsH))} h`;
  const held = `${isWater ? 'Drinkers' : 'Feeders'} (${holds}${isAssumed ? ', assumed' : ''}) last`;
  return `${held} ${lasts}${isWater ? ' on a hot day' : ''}${at}: fill ${often(isWater ? 1 : share, rounds)}.`;
}

/** Water is fresh every morning; feed for several days is filled up when it is low. */
function often(days: number, rounds: readonly Round[]): string {
  if (1 < rounds.length) return listed(rounds);
  const every = Math.floor(days);
  if (every < 2) return 'every morning';
  return every === 2 ? 'every other morning' : `every ${Math.min(every, 7)} days`;
}
