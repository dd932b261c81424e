import { addDays, daysBetween } from '../../calendar/plain-date.js';
import type { OwnJob } from '../../farm/job.js';
import type { KeyDate } from '../tasks/event.js';

/**
 * A job on the dates it has now: those it was given, moved by as many days as the event it hangs
 * on has moved since. A job whose event is gone stays where it is.
 */
export function movedWithEvent(job: OwnJob, events: readonly KeyDate[]): OwnJob {
  const { tiedTo } = job;
  const event = tiedTo && events.find(({ id }) => id === tiedTo.eventId);
  if (!event || event.date === tiedTo.on) return job;
  const days = daysBetween(tiedTo.on, event.date);
  return {
    ...job,
    tiedTo: { eventId: event.id, on: event.date },
    dueOn: addDays(job.dueOn, days),
    ...(job.notBefore === undefined ? {} : { notBefore: addDays(job.notBefore, days) }),
    ...(job.noUseAfter === undefined ? {} : { noUseAfter: addDays(job.noUseAfter, days) }),
  };
}
