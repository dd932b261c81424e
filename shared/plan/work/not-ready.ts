import type { EventToMove } from './event-to-move.js';

/** What is not ready before an event; undefined where all of it has begun, if late, as is said instead. */
export const notReady = ({
  names,
  shortRun,
}: Pick<EventToMove, 'names' | 'shortRun'>): string | undefined =>
  shortRun ? undefined : `not ready before it: ${names.join('; ')}`;
