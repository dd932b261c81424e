import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Draws numbers from 0 to below 1. Handed in, so that the same seed gives the same plan. */
export type Random = () => number;

/** The same numbers again for the same seed. */
export function seededRandom(seed: number): Random {
  const generator = xoroshiro128plus(seed);
  return () => uniformFloat64(generator);
}

/** A whole number from 0 to below `count`. */
export const drawIndex = (random: Random, count: number): number => Math.floor(random() * count);
