import type { PlainDate } from '../../calendar/plain-date.js';
import type { PlannedPiece } from './planned-work.js';

/** What work takes of one day. */
export interface DayPiece {
  readonly date: PlainDate;
  /** Of each who takes part; where several have a piece of it each, of them together. */
  readonly hours: number;
  readonly personIds: readonly string[];
  /** Where several have a piece of it each: whose piece is how long. */
  readonly each?: readonly PlannedPiece[];
}

/** The pieces that work has on a day, as one; undefined where it has none. */
export function dayPiece(
  { pieces }: { readonly pieces: readonly PlannedPiece[] },
  date: PlainDate,
): DayPiece | undefined {
  const its = pieces.filter((piece) => piece.date === date);
  if (its.length < 2) return its[0];
  return {
    date,
    hours: its.reduce((sum, { hours }) => sum + hours, 0),
    personIds: its.flatMap(({ personIds }) => personIds),
    each: its,
  };
}
