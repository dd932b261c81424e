import type { PlainDate } from '../../shared/calendar/plain-date.js';
import type { HerdGoes } from '../../shared/plan/work/herd-goes.js';
import type { Said } from '../told/keep-facts.js';

/** The move that is told by the tick of a piece of work or of a chore. */
export const movedBy = (
  { herdId: about, paddockId }: HerdGoes,
  work: string,
  on: PlainDate,
): Said => ({ kind: 'herd-move', about, on, details: { paddockId, work } });
