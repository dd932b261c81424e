import type { PlainDate } from '../calendar/plain-date.js';
import type { Progress } from './job.js';

type Marks = Omit<Progress, 'key'>;

/**
 * What holds of a piece of work after something more was said of it: what was said before of its
 * hours and days stays. Done, it is not struck out any more, and the other way round.
 */
export function afterSaid(before: Marks, said: Marks, today: PlainDate): Marks {
  const { struckOut: _struck, because: _because, ...kept } = before;
  const { doneOn: _done, doneBy: _by, hours: _hours, ...open } = before;
  const isDone = said.doneOn !== undefined || said.struckOut === false;
  // Whoever did it on another day did not do it on this one.
  const { doneBy: _other, ...again } = kept;
  const isOtherDay = said.doneOn !== undefined && said.doneOn !== before.doneOn;
  const base = isDone ? (isOtherDay ? again : kept) : before;
  const { struckOut, ...more } = said;
  return {
    ...(struckOut === true ? { ...open, struckOut } : base),
    ...Object.fromEntries(Object.entries(more).filter(([, value]) => value !== undefined)),
    ...partOf(before, said, today),
  };
}

/** Hours of each that are done of it today, so that they can be taken off today's. */
function partOf(before: Marks, { hoursDone }: Marks, today: PlainDate): Marks {
  const more = (hoursDone ?? 0) - (before.hoursDone ?? 0);
  if (more <= 0) return {};
  const earlier = before.partOn === today ? (before.partHours ?? 0) : 0;
  return { partOn: today, partHours: earlier + more };
}
