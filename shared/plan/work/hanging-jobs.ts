import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { OwnJob } from '../../farm/job.js';
import type { KeyDate } from '../tasks/event.js';

type Tied = NonNullable<OwnJob['tiedTo']>;

/**
 * A job on the dates it has now: those it was given, moved by as many days as the event it hangs
 * on has moved since; and the end of one that comes again, by the event that end hangs on. A job
 * whose event is gone stays where it is.
 */
export function movedWithEvent(job: OwnJob, events: readonly KeyDate[]): OwnJob {
  return withEnd(withDates(job, events), events);
}

function withDates(job: OwnJob, events: readonly KeyDate[]): OwnJob {
  const now = job.tiedTo && moved(job.tiedTo, events);
  if (!now) return job;
  const { days, tiedTo } = now;
  return {
    ...job,
    tiedTo,
    dueOn: addDays(job.dueOn, days),
    ...(job.notBefore === undefined ? {} : { notBefore: addDays(job.notBefore, days) }),
    ...(job.noUseAfter === undefined ? {} : { noUseAfter: addDays(job.noUseAfter, days) }),
  };
}

function withEnd(job: OwnJob, events: readonly KeyDate[]): OwnJob {
  const { repeats } = job;
  const now = repeats?.untilTiedTo && moved(repeats.untilTiedTo, events);
  if (!repeats || repeats.until === undefined || !now) return job;
  const until: PlainDate = addDays(repeats.until, now.days);
  return { ...job, repeats: { ...repeats, until, untilTiedTo: now.tiedTo } };
}

/** By how many days an event has moved, and where it is now; undefined where it is where it was. */
function moved(
  tiedTo: Tied,
  events: readonly KeyDate[],
): { readonly days: number; readonly tiedTo: Tied } | undefined {
  const event = events.find(({ id }) => id === tiedTo.eventId);
  if (!event || event.date === tiedTo.on) return undefined;
  return {
    days: daysBetween(tiedTo.on, event.date),
    tiedTo: { eventId: event.id, on: event.date },
  };
}
