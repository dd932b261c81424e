import { In, type EntityManager } from 'typeorm';
import { addDays } from '../../shared/calendar/plain-date.js';
import { byHerd, paddockOn, placeOf } from '../../shared/farm/herd-places.js';
import type { HerdMove } from '../../shared/farm/told-fact.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import { HerdEntity } from '../herds/herd.entity.js';
import { PaddockEntity } from '../paddocks/paddock.entity.js';
import type { NamesOfFarm } from './names-of-farm.js';

interface Moved {
  /** Moves that were told or taken back. */
  readonly changed: readonly HerdMove[];
  /** All of the farm that were not taken back, with the change. */
  readonly all: readonly HerdMove[];
  readonly names: Pick<NamesOfFarm, 'herds' | 'paddocks'>;
}

/**
 * After herds have moved: refuses two in one paddock, and makes the herds and the paddocks they left
 * newer than what forms have open.
 */
export async function settlePlaces(
  manager: EntityManager,
  farmId: string,
  { changed, all, names: { herds, paddocks } }: Moved,
  field: string,
): Promise<void> {
  if (changed.length === 0) return;
  const known = new Set(paddocks.map(({ id }) => id));
  const moves = byHerd(all);
  for (const move of changed) {
    const already = alreadyIn(move, moves.get(move.about) ?? []);
    const stands = paddocks.find(({ id }) => id === already);
    if (stands) throw new FieldError([thereAlready(field, stands)]);
    if (move.details.isStill && isElsewhere(move, moves.get(move.about) ?? []))
      throw new FieldError([notThere(field, move)]);
  }
  const movers = new Set(changed.map(({ about }) => about));
  const placed = new Map<string, { id: string; name: string }>();
  for (const { id, name } of herds) {
    const { inPaddockId } = placeOf(moves.get(id) ?? [], known);
    if (inPaddockId === undefined) continue;
    const other = placed.get(inPaddockId);
    if (other && (movers.has(id) || movers.has(other.id))) {
      throw new FieldError([bothThere(field, inPaddockId, other.name, name)]);
    }
    placed.set(inPaddockId, { id, name });
  }
  await manager.increment(HerdEntity, { id: In([...movers]), farmId }, 'version', 1);
  const left = changed.flatMap(({ about, on, details }) => [
    details.paddockId,
    paddockOn(moves.get(about) ?? [], on),
  ]);
  const ids = [...new Set(left)].filter((id) => id !== undefined);
  if (0 < ids.length) {
    await manager.increment(PaddockEntity, { id: In(ids), farmId }, 'version', 1);
  }
}

/**
 * The paddock that a herd is said to go into while it stands there, by all else that was told; a tick
 * of the day’s work may say it again.
 */
function alreadyIn(
  { id, on, details, replaces }: HerdMove,
  moves: readonly HerdMove[],
): string | undefined {
  const isTold = moves.some((move) => move.id === id);
  const mayBe =
    details.isTyped || details.isStill || details.work !== undefined || replaces !== undefined;
  if (!isTold || mayBe) return undefined;
  const before = paddockOn(
    moves.filter((move) => move.id !== id),
    addDays(on, 1),
  );
  return before === details.paddockId ? before : undefined;
}

/** Whether a herd that is said to be still somewhere was told to be anywhere else. */
function isElsewhere(move: HerdMove, moves: readonly HerdMove[]): boolean {
  const isTold = moves.some(({ id }) => id === move.id);
  return isTold && paddockOn(moves, addDays(move.on, 1)) !== move.details.paddockId;
}

const notThere = (field: string, { details }: HerdMove): FieldProblem => ({
  field,
  code: 'conflict',
  given: details.paddockId,
  fix: 'By what was told they were not there on that day: tell that they went into it, with the day.',
});

const thereAlready = (field: string, { id, name }: { id: string; name: string }): FieldProblem => ({
  field,
  code: 'conflict',
  given: id,
  fix: `They stand in ${name} already on that day: there is nothing to move. If they had been led out and back, tell the paddock they were in between.`,
});

const bothThere = (field: string, given: string, one: string, other: string): FieldProblem => ({
  field,
  code: 'conflict',
  given,
  fix: `${one} and ${other} would both stand there. Move one of them first, or join the herds.`,
});
