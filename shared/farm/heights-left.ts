import { byHerd, paddockOn } from './herd-places.js';
import type { GrassReading } from './paddock.js';
import { holding, type HerdMove } from './told-fact.js';

/** Heights that were told with moves: readings of the paddocks that herds left, on the day they left. */
export const heightsLeft = (moves: readonly HerdMove[]): GrassReading[] =>
  [...byHerd(moves).values()].flatMap((own) =>
    holding(own).flatMap((move): GrassReading[] => {
      const { id, on, details } = move;
      const { leftHeightCm, paddockId } = details;
      if (leftHeightCm === undefined) return [];
      const left = leftBy(move, own);
      // Where they still are nothing was left.
      if (left === undefined || left === paddockId) return [];
      return [{ id, paddockId: left, date: on, heightCm: leftHeightCm, isOfMove: true }];
    }),
  );

/** The paddock that a herd left with a move: where the move told before it on that day had brought it. */
function leftBy({ on, toldAt }: HerdMove, own: readonly HerdMove[]): string | undefined {
  const before = holding(own).filter(
    (each) => each.on === on && each.toldAt < toldAt && !each.details.isStill,
  );
  const last = before.reduce<HerdMove | undefined>(
    (late, each) => (late && each.toldAt < late.toldAt ? late : each),
    undefined,
  );
  return last ? last.details.paddockId : paddockOn(own, on);
}

/** Readings of walks with those of moves; of one paddock and day that of the walk counts. */
export function withHeightsLeft(
  walked: readonly GrassReading[],
  moves: readonly HerdMove[],
): GrassReading[] {
  const left = heightsLeft(moves);
  if (left.length === 0) return [...walked];
  const read = new Set(walked.map(({ paddockId, date }) => `${paddockId}/${date}`));
  return [...walked, ...left.filter((own) => !read.has(`${own.paddockId}/${own.date}`))].sort(
    (a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.id < b.id ? -1 : 1),
  );
}
