import type { PlainDate } from '../../calendar/plain-date.js';
import type { Herd } from '../../farm/herd.js';
import { isTurnOutWork, movesKey } from '../../farm/herd-move-work.js';
import type { HerdGoes } from '../pasture/move-told.js';
import { placeNow } from '../pasture/moves-assumed.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';

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
