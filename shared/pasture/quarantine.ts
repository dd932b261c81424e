import { addDays, type PlainDate } from '../calendar/plain-date.js';
import type { CattleGroup } from '../farm/herd.js';
import type { Tables } from '../tables/tables.js';

/** Days on which bought-in cattle stand apart from those they will join. */
export interface Apart {
  readonly from: PlainDate;
  /** The first day among the others. */
  readonly out: PlainDate;
}

type Staying = Pick<CattleGroup, 'arrivesOn' | 'leavesOn' | 'apartDays'>;

/**
 * When a group of a herd stands apart: from its arrival, the days it is said to or those of the table, where cattle of that
 * herd are there already. Undefined for cattle that were always there, or come to none.
 */
export function apartOf(
  groups: readonly Staying[],
  group: Staying,
  { pasture }: Pick<Tables, 'pasture'>,
): Apart | undefined {
  const from = group.arrivesOn;
  if (from === undefined) return undefined;
  const joins = groups.some(
    (other) =>
      other !== group &&
      (other.arrivesOn === undefined || other.arrivesOn < from) &&
      (other.leavesOn === undefined || from < other.leavesOn),
  );
  return joins
    ? { from, out: addDays(from, group.apartDays ?? pasture.quarantineDays.value) }
    : undefined;
}

/** Whether a group stands apart on a date. */
export function isApart(
  groups: readonly Staying[],
  group: Staying,
  on: PlainDate,
  tables: Pick<Tables, 'pasture'>,
): boolean {
  const apart = apartOf(groups, group, tables);
  return apart !== undefined && apart.from <= on && on < apart.out;
}
