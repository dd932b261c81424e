import type { PlainDate } from '../../../../shared/calendar/plain-date.js';
import type { OwnJob } from '../../../../shared/farm/job.js';
import type { KeyDate } from '../../../../shared/plan/tasks/event.js';

interface JobDraft {
  readonly dueOn?: PlainDate | undefined;
  readonly tiedTo?: OwnJob['tiedTo'] | undefined;
}

/** A day that nobody has typed is that of the key date, from which it then keeps its distance. */
export const tied = (
  { dueOn }: { readonly dueOn?: PlainDate | undefined },
  tiedTo: OwnJob['tiedTo'],
  usualDue: PlainDate,
): JobDraft => ({
  tiedTo,
  dueOn: tiedTo && dueOn === usualDue ? tiedTo.on : dueOn,
});

/** What ties a job to a key date. */
export const hangingOn = (events: readonly KeyDate[], id: string | undefined): OwnJob['tiedTo'] => {
  const event = events.find((each) => each.id === id);
  return event && { eventId: event.id, on: event.date };
};
