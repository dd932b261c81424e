import { addDays, daysBetween } from '../../calendar/plain-date.js';
import type { OwnJob } from '../../farm/job.js';
import type { KeyDate } from '../tasks/event.js';

/**
 * A job on the dates it has now: those it was given, moved by as many days as the event it hangs
 * on has moved since. A job whose event is gone stays where it is.
 */
export function movedWithEvent(job: OwnJob, events: readonly KeyDate[]): OwnJob {
  const { hangsOn } = job;
  const event = hangsOn && events.find(({ id }) => id === hangsOn.eventId);
  if (!event || event.date === hangsOn.on) return job;
  const days = daysBetween(hangsOn.on, event.date);
  return {
    ...job,
    hangsOn: { eventId: event.id, on: event.date },
    dueOn: addDays(job.dueOn, days),
    ...(job.notBefore === undefined ? {} : { notBefore: addDays(job.notBefore, days) }),
    ...(job.lastOn === undefined ? {} : { lastOn: addDays(job.lastOn, days) }),
  };
}
