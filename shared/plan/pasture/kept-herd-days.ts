import type { CattleGroup, Herd } from '../../farm/herd.js';
import { herdDays, type HerdDays } from '../../pasture/herd-demand.js';
import type { PlannedHerd } from '../../pasture/named-cows.js';
import type { Tables } from '../../tables/tables.js';

type Span = Parameters<typeof herdDays>[2];

interface Known {
  readonly tables: Tables;
  readonly cows: PlannedHerd['cows'];
  readonly span: Span;
  readonly days: HerdDays;
}

const knownOf = new WeakMap<readonly CattleGroup[], Known>();

/**
 * What a herd is and needs on each day, kept by its groups: where it stands changes none of it, and
 * a plan is made again after each move.
 *
 * @param planned the same herd with its named cows apart
 */
export function keptHerdDays(
  { groups }: Herd,
  planned: PlannedHerd,
  tables: Tables,
  span: Span,
): HerdDays {
  const known = knownOf.get(groups);
  if (
    known?.tables === tables &&
    isSameList(known.cows, planned.cows) &&
    isSameSpan(known.span, span)
  )
    return known.days;
  const days = herdDays(planned, tables, span);
  knownOf.set(groups, { tables, cows: planned.cows, span, days });
  return days;
}

const isSameSpan = (one: Span, other: Span): boolean =>
  one.first === other.first &&
  one.days === other.days &&
  one.from === other.from &&
  (['minC', 'maxC', 'hotC', 'energyMcalPerKg'] as const).every((name) =>
    isSameList(one[name], other[name]),
  );

function isSameList<T>(one: ArrayLike<T>, other: ArrayLike<T>): boolean {
  if (one === other) return true;
  if (one.length !== other.length) return false;
  for (let k = 0; k < one.length; k++) if (one[k] !== other[k]) return false;
  return true;
}
