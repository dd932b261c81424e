import type { PlainDate } from '../../calendar/plain-date.js';
import { movesKey } from '../../farm/herd-move-work.js';
import type { AssumedMove } from './moves-assumed.js';

/** Where a tick says that a herd went. */
export interface HerdGoes {
  readonly herdId: string;
  readonly paddockId: string;
  /** Moves before it that nobody told: who says that the last was made as planned says it of these. */
  readonly assumed?: readonly Pick<AssumedMove, 'paddockId' | 'on'>[];
}

/** The same, or that they came off grass. */
type Goes = Omit<HerdGoes, 'paddockId'> & { readonly paddockId?: string };

/**
 * The moves that the tick of a piece of work or of a chore tells, or who says where they are now.
 *
 * @param goes without a paddock where they came off grass
 */
export const movedBy = ({ herdId, paddockId, assumed = [] }: Goes, work: string, on: PlainDate) => [
  ...assumed.map((move) => {
    // Undone, the tick takes back all that it told.
    return withWork(moveTold(herdId, move), { work, tickedOn: on });
  }),
  withWork(moveTold(herdId, { ...(paddockId === undefined ? {} : { paddockId }), on }), { work }),
];

/** What is told of a move that was made as planned. */
export const moveTold = (
  about: string,
  { paddockId, on }: { readonly paddockId?: string; readonly on: PlainDate },
) => ({
  ...({ kind: 'herd-move', about, on } as const),
  details: paddockId === undefined ? { isOff: true as const } : { paddockId },
});

const withWork = <More extends object>(told: ReturnType<typeof moveTold>, more: More) => ({
  ...told,
  details: { ...told.details, ...more },
});

/** A move that is told by itself, with those before it that nobody told: they hold with it. */
export function toldWithBefore(goes: Goes, on: PlainDate) {
  const before = (goes.assumed ?? []).filter((move) => move.on < on);
  return before.length === 0
    ? [moveTold(goes.herdId, { ...goes, on })]
    : movedBy({ ...goes, assumed: before }, movesKey(goes.herdId), on);
}
