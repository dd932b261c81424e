import type { Composition, Ingredient, Nutrient } from '../tables/ration-tables.js';
import { overLimit } from './least-cost.js';
import type { Row, Solve } from './linear-program.js';
import { heldBy } from './nutrients.js';
import { atEnergy, type NutrientLimit } from './nutrient-limits.js';

/** What may go into a mix, whatever it costs. */
export interface Part {
  readonly holds: Composition;
  readonly least: number;
  readonly most: number;
}

/** A limit that the nearest mix misses. */
export interface Missed {
  readonly nutrient: Nutrient;
  readonly side: 'least' | 'most';
  /** What it should hold at the energy it has, and what it holds, in the unit of the tables. */
  readonly asked: number;
  readonly held: number;
}

/** The mix that misses its limits by the least, each miss as a part of what is asked. */
export interface Nearest {
  readonly shares: readonly number[];
  readonly missed: readonly Missed[];
  readonly missedInAll: number;
}

/** Below this part of what is asked nothing is missed. */
const HARDLY = 1e-6;

/**
 * The nearest there is to a mix that keeps every limit. Each limit may be missed, at a price of one
 * for all that is asked; the solver finds the misses that cost least.
 *
 * @returns nothing when the parts cannot fill a mix, or fixed ones overfill it
 */
export function nearestMix(
  parts: readonly Part[],
  limits: readonly NutrientLimit[],
  solve: Solve,
): Nearest | undefined {
  if (parts.length === 0) return undefined;
  const found = solve({
    columns: [
      ...parts.map(({ least, most }) => ({ cost: 0, least, most })),
      ...limits.map(({ value }) => ({ cost: 1 / value, least: 0, most: 1e6 })),
    ],
    rows: [
      { weights: [...parts.map(() => 1), ...limits.map(() => 0)], least: 1, most: 1 },
      ...limits.map((limit, i): Row => ({
        weights: [
          ...parts.map((part) => overLimit(part, limit)),
          ...limits.map((_, k) => (k !== i ? 0 : limit.side === 'least' ? 1 : -1)),
        ],
        [limit.side]: 0,
      })),
    ],
  });
  if (!found) return undefined;
  const shares = found.amounts.slice(0, parts.length);
  const mix = parts.map(({ holds }, i) => ({ share: shares[i]!, holds }));
  const energy = heldBy(mix, 'energyKcalPerKg');
  return {
    shares,
    missedInAll: found.cost,
    missed: limits.flatMap((limit, k): Missed[] => {
      const { nutrient, side, value } = limit;
      if (found.amounts[parts.length + k]! <= HARDLY * value) return [];
      const asked = atEnergy(limit, value, energy);
      return [{ nutrient, side, asked, held: heldBy(mix, nutrient) }];
    }),
  };
}

const MOST_ADDED = 6;

type Candidate = Ingredient & Part;

/**
 * Ingredients that would make a mix possible: minerals first, each time the one with which the
 * nearest mix misses least; what the others turn out to make needless is left out again.
 *
 * @returns nothing when none help
 */
export function whatWouldHelp(
  parts: readonly Part[],
  limits: readonly NutrientLimit[],
  { among, solve }: { readonly among: readonly Candidate[]; readonly solve: Solve },
): readonly Ingredient[] | undefined {
  const missedWith = (more: readonly Part[]): number =>
    nearestMix([...parts, ...more], limits, solve)?.missedInAll ?? Infinity;
  let added: readonly Candidate[] = [];
  const addBest = (group: readonly Candidate[]): void => {
    for (let missed = missedWith(added); HARDLY < missed && added.length < MOST_ADDED;) {
      const tried = group
        .filter((each) => !added.includes(each))
        .map((each) => ({ each, missed: missedWith([...added, each]) }));
      const least = Math.min(...tried.map((each) => each.missed));
      if (missed - HARDLY <= least) return;
      added = [...added, tried.find((each) => each.missed <= least + HARDLY)!.each];
      missed = least;
    }
  };
  const isMineral = ({ what }: Ingredient): boolean => what === 'mineral';
  // What leaves room in a mix is filled with grain before all else.
  if (missedWith([]) === Infinity)
    addBest(among.filter(({ what }) => what === 'grain').slice(0, 1));
  addBest(among.filter(isMineral));
  addBest(among.filter((each) => !isMineral(each)));
  if (HARDLY < missedWith(added)) return undefined;
  for (const each of added.filter(({ what }) => what !== 'grain')) {
    const without = added.filter((other) => other !== each);
    if (missedWith(without) <= HARDLY) added = without;
  }
  return added;
}
