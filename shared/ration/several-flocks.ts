import type { Reader } from '../units/format.js';
import type { NutrientLimit } from './nutrient-limits.js';
import { NUTRIENT_NAMES } from './nutrients.js';
import { lowerName, sayNutrient } from './ration-words.js';

/** A flock that eats of a mix: what it is called at the head and within a sentence, and its needs. */
export interface FlockOfMix {
  readonly title: string;
  readonly called: string;
  readonly limits: readonly NutrientLimit[];
}

/** A limit as a part of the energy that it goes with, so that those of different tables compare. */
const strictness = ({ value, atKcalPerKg }: NutrientLimit): number =>
  atKcalPerKg === undefined ? value : value / atKcalPerKg;

/** One list of limits for several flocks: the highest least and the lowest most of each nutrient. */
export function strictest(flocks: readonly FlockOfMix[]): NutrientLimit[] {
  const all = new Map<string, NutrientLimit>();
  for (const { limits } of flocks)
    for (const limit of limits) {
      const key = `${limit.nutrient} ${limit.side}`;
      const known = all.get(key);
      const isStricter =
        !known ||
        (limit.side === 'least'
          ? strictness(known) < strictness(limit)
          : strictness(limit) < strictness(known));
      if (isStricter) all.set(key, limit);
    }
  return [...all.values()];
}

/** What no one feed can be to all of them, whatever is in it, in words; none where it can. */
export function flocksApart(flocks: readonly FlockOfMix[], farm: Reader): string[] {
  const words = new Set<string>();
  for (const { called, limits } of flocks)
    for (const least of limits.filter(({ side }) => side === 'least'))
      for (const other of flocks) {
        const most = other.limits.find(
          ({ nutrient, side }) => side === 'most' && nutrient === least.nutrient,
        );
        if (!most || most.value >= least.need) continue;
        const { nutrient } = least;
        words.add(
          `${called} need ${sayNutrient(nutrient, least.need, farm)} ${lowerName(NUTRIENT_NAMES[nutrient])}, and ${lowerName(other.called)} stand ${sayNutrient(nutrient, most.value, farm)} at most.`,
        );
      }
  return [...words];
}
