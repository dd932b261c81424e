import { byHerd, paddockOn } from './herd-places.js';
import type { GrassReading } from './paddock.js';
import { holding, type HerdMove } from './told-fact.js';

/** Heights that were told with moves: readings of the paddocks that herds left, on the day they left. */
export const heightsLeft = (moves: readonly HerdMove[]): GrassReading[] =>
  [...byHerd(moves).values()].flatMap((own) =>
    holding(own).flatMap(({ id, on, details: { leftHeightCm, paddockId } }): GrassReading[] => {
      if (leftHeightCm === undefined) return [];
      const left = paddockOn(own, on);
      // Where they still are nothing was left.
      if (left === undefined || left === paddockId) return [];
      return [{ id, paddockId: left, date: on, heightCm: leftHeightCm, isOfMove: true }];
    }),
  );

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
