import type { Forage, GrassGroup } from '../tables/pasture-tables.js';
import { rowById } from '../tables/tables.js';
import type { GrassKind } from './sward-day.js';

/** Groups of grasses in a forage, with their shares. */
export const groupsOf = (
  { groups }: Forage,
  all: readonly GrassGroup[],
): { readonly group: GrassGroup; readonly share: number }[] =>
  groups.shares.map(({ id, share }) => ({ group: rowById(all, id), share }));

/**
 * What a mixed sward grows like: the parameters of its groups, weighted by their shares.
 * Jouven et al. 2006, "Parameters".
 */
export function kindOf(forage: Forage, all: readonly GrassGroup[]): GrassKind {
  const before = known.get(forage);
  if (before?.all === all) return before.kind;
  const kind = mixed(forage, all);
  known.set(forage, { all, kind });
  return kind;
}

/** Paddocks of one forage share its kind, and what is worked out of it. */
const known = new WeakMap<
  Forage,
  { readonly all: readonly GrassGroup[]; readonly kind: GrassKind }
>();

function mixed(forage: Forage, all: readonly GrassGroup[]): GrassKind {
  const parts = groupsOf(forage, all);
  const whole = parts.reduce((sum, { share }) => sum + share, 0);
  const mean = (of: (group: GrassGroup) => number): number =>
    parts.reduce((sum, { group, share }) => sum + of(group) * share, 0) / whole;
  return {
    leafAreaM2PerG: mean((g) => g.leafAreaM2PerG),
    bladeShare: mean((g) => g.bladeShare),
    stemsFromSum: mean((g) => g.stemsFromSum),
    stemsToSum: mean((g) => g.stemsToSum),
    springFactor: mean((g) => g.springFactor),
    autumnFactor: mean((g) => g.autumnFactor),
    leafLifeSum: mean((g) => g.leafLifeSum),
    leafDigestible: {
      new: mean((g) => g.leafDigestible.new),
      old: mean((g) => g.leafDigestible.old),
    },
    stemDigestible: {
      new: mean((g) => g.stemDigestible.new),
      old: mean((g) => g.stemDigestible.old),
    },
    lightUseGPerMJ: mean((g) => g.response.lightUseGPerMJ),
    baseC: mean((g) => g.response.baseC),
    wakesC: mean((g) => g.response.wakesC),
    fullFromC: mean((g) => g.response.fullFromC),
    fullToC: mean((g) => g.response.fullToC),
    stopC: mean((g) => g.response.stopC),
    lostPerMJ: mean((g) => g.response.lostPerMJ),
    ageingBaseC: mean((g) => g.response.ageingBaseC),
    onsetSum: mean((g) => g.response.onsetSum),
  };
}
