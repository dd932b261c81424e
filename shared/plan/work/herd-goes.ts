import type { PlainDate } from '../../calendar/plain-date.js';
import type { Herd } from '../../farm/herd.js';
import { isTurnOutWork, movesKey } from '../../farm/herd-move-work.js';
import { placeNow, type AssumedMove } from '../pasture/moves-assumed.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';

/** Where a tick says that a herd went. */
export interface HerdGoes {
  readonly herdId: string;
  readonly paddockId: string;
  /** Moves before it that nobody told: who says that the last was made as planned says it of these. */
  readonly assumed?: readonly Pick<AssumedMove, 'paddockId' | 'on'>[];
}

/** The moves that the tick of a piece of work or of a chore tells. */
export const movedBy = (
  { herdId, paddockId, assumed = [] }: HerdGoes,
  work: string,
  on: PlainDate,
) => [
  ...assumed.map((move) => {
    const told = moveTold(herdId, move);
    // Undone, the tick takes back all that it told.
    return { ...told, details: { ...told.details, work, tickedOn: on } };
  }),
  { ...moveTold(herdId, { paddockId, on }), details: { paddockId, work } },
];

/** What is told of a move that was made as planned. */
export const moveTold = (
  about: string,
  { paddockId, on }: { readonly paddockId?: string; readonly on: PlainDate },
) => ({
  ...({ kind: 'herd-move', about, on } as const),
  details: paddockId === undefined ? { isOff: true as const } : { paddockId },
});

type Standing = Pick<Herd, 'id' | 'inPaddockId'>;

/**
 * The paddock that the tick of a chore brings a herd to: on the first day of a stay in another one
 * than it stands in. A strip further on is the same paddock.
 */
export function goesByChore(
  { key, on }: { readonly key: string; readonly on: PlainDate },
  herds: readonly Standing[],
  pasture: Pick<PasturePlan, 'moves' | 'assumedMoves'> | undefined,
): HerdGoes | undefined {
  const herd = herds.find(({ id }) => movesKey(id) === key);
  const move = pasture?.moves.find(({ herdId, from }) => herdId === herd?.id && from === on);
  if (!herd || !move) return undefined;
  if (move.paddockId === placeNow(herd, pasture?.assumedMoves).inPaddockId) return undefined;
  const assumed = (pasture?.assumedMoves ?? []).filter(
    ({ herdId, on: day }) => herdId === herd.id && day < on,
  );
  return {
    ...{ herdId: herd.id, paddockId: move.paddockId },
    ...(assumed.length === 0 ? {} : { assumed }),
  };
}

/** The first paddock of the season, by the work that lets a herd out while it stands in none. */
export function goesByTurnOut(
  key: string,
  herds: readonly Standing[],
  pasture: Pick<PasturePlan, 'moves'>,
): HerdGoes | undefined {
  if (!isTurnOutWork(key)) return undefined;
  const herd = herds.find(({ id }) => key.startsWith(`herd/${id}/`));
  if (!herd || herd.inPaddockId !== undefined) return undefined;
  const move = pasture.moves.find(({ herdId }) => herdId === herd.id);
  return move && { herdId: herd.id, paddockId: move.paddockId };
}
