import type { PlainDate } from '../../calendar/plain-date.js';
import type { Herd } from '../../farm/herd.js';
import { isTurnOutWork, movesKey } from '../../farm/herd-move-work.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';

/** Where a tick says that a herd went. */
export interface HerdGoes {
  readonly herdId: string;
  readonly paddockId: string;
}

/** The move that the tick of a piece of work or of a chore tells. */
export const movedBy = ({ herdId: about, paddockId }: HerdGoes, work: string, on: PlainDate) => ({
  ...({ kind: 'herd-move', about, on } as const),
  details: { paddockId, work },
});

type Standing = Pick<Herd, 'id' | 'inPaddockId'>;

/**
 * The paddock that the tick of a chore brings a herd to: on the first day of a stay in another one
 * than it stands in. A strip further on is the same paddock.
 */
export function goesByChore(
  { key, on }: { readonly key: string; readonly on: PlainDate },
  herds: readonly Standing[],
  pasture: Pick<PasturePlan, 'moves'> | undefined,
): HerdGoes | undefined {
  const herd = herds.find(({ id }) => movesKey(id) === key);
  const move = pasture?.moves.find(({ herdId, from }) => herdId === herd?.id && from === on);
  return herd && move && move.paddockId !== herd.inPaddockId
    ? { herdId: herd.id, paddockId: move.paddockId }
    : undefined;
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
