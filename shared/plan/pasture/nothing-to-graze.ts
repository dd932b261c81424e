import type { PastureContext } from './pasture-context.js';
import type { Chosen } from './surplus.js';

/** A herd that stands in a paddock in which there is nothing to graze when the plan begins. */
export interface NothingToGraze {
  readonly herdId: string;
  readonly paddockId: string;
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
export const nothingToGraze = (
  { span, herds, herdDays }: Pick<PastureContext, 'span' | 'herds' | 'herdDays'>,
  { books }: Chosen,
): NothingToGraze[] =>
  herds.flatMap(({ id, inPaddockId }, h): NothingToGraze[] => {
    const grazes = books.stays.some(({ herd, from }) => herd === h && from === span.from);
    const eats = 0 < herdDays[h]!.grassKg[span.from]!;
    return inPaddockId === undefined || grazes || !eats
      ? []
      : [{ herdId: id, paddockId: inPaddockId }];
  });

/** What is done with a herd that stands where there is nothing to graze. */
export const OFF_IT = 'Take them off it, or keep them on hay in one part of it,';

/** The paddock a herd stands in when the plan begins, where there is nothing to graze in it. */
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
  const bare = all.find((each) => each.herdId === herdId);
  return bare && paddocks.find(({ id }) => id === bare.paddockId);
}
