import { addDays } from '../../calendar/plain-date.js';
import type { PastureContext } from './pasture-context.js';
import type { Chosen } from './surplus.js';

/** A herd that stands in a paddock in which there is nothing to graze when the plan begins. */
export interface NothingToGraze {
  readonly herdId: string;
  readonly paddockId: string;
  /** It is in the way of its grass: it went in as that grew, or the paddock is soon to be grazed. */
  readonly isInTheWay?: true;
}

interface Named {
  readonly id: string;
  readonly name: string;
}

/**
 * Herds that were told to stand in a paddock and that the plan feeds hay from its first day on: they
 * went in before its grass was ready, or have grazed it down and no other is. Its rest begins when
 * they are out of it.
 */
export const nothingToGraze = (context: PastureContext, { books }: Chosen): NothingToGraze[] => {
  const { span, herds, herdDays } = context;
  return herds.flatMap(({ id, inPaddockId, inSince }, h): NothingToGraze[] => {
    const grazes = books.stays.some(({ herd, from }) => herd === h && from === span.from);
    const eats = 0 < herdDays[h]!.grassKg[span.from]!;
    if (inPaddockId === undefined || grazes || !eats) return [];
    const isNew = inSince !== undefined && span.opens <= inSince;
    const isInTheWay = isNew || isSoonGrazed(context, books, inPaddockId);
    return [{ herdId: id, paddockId: inPaddockId, ...(isInTheWay ? { isInTheWay } : {}) }];
  });
};

/** A herd that winters on a paddock on hay has to be out of it for its rest, no sooner. */
function isSoonGrazed(
  { span, paddocks, grass, today, dateOf }: PastureContext,
  books: Chosen['books'],
  paddockId: string,
): boolean {
  const p = paddocks.findIndex(({ id }) => id === paddockId);
  const next = books.stays.find(({ paddock, from }) => paddock === p && span.from <= from);
  return (
    span.opens <= today &&
    next !== undefined &&
    dateOf(next.from) <= addDays(today, grass.swards[p]!.sward.leastRestDays)
  );
}

/** What is done with a herd that stands where there is nothing to graze. */
export const OFF_IT = 'Take them off it, or keep them on hay in one part of it,';

/** The paddock a herd is to leave, as there is nothing to graze in it. */
export function nothingToGrazeOf(
  {
    nothingToGraze: all = [],
    paddocks,
  }: {
    readonly nothingToGraze?: readonly NothingToGraze[];
    readonly paddocks: readonly Named[];
  },
  herdId: string,
): Named | undefined {
  const bare = all.find((each) => each.herdId === herdId && each.isInTheWay);
  return bare && paddocks.find(({ id }) => id === bare.paddockId);
}
