import { addDays, type PlainDate } from '../calendar/plain-date.js';
import type { OwnJob, Progress } from './job.js';

/**
 * The day on which a job went to rest: it is kept, but takes no place among the jobs there may be
 * and is no longer planned. Undefined for a job that does not rest yet.
 *
 * @param mark what became of it
 * @param after days from when it was done, or was lost for its year
 */
export function restingSince(
  job: Pick<OwnJob, 'noUseAfter' | 'repeats'>,
  mark: Omit<Progress, 'key'> | undefined,
  today: PlainDate,
  after: { readonly doneDays: number; readonly lostDays: number },
): PlainDate | undefined {
  // Work that comes again is over on the last day it may come on; its one time is lost each time.
  const last = job.repeats ? job.repeats.until : job.noUseAfter;
  const since =
    mark?.doneOn !== undefined
      ? addDays(mark.doneOn, after.doneDays)
      : last && addDays(last, after.lostDays);
  return since !== undefined && since <= today ? since : undefined;
}

/** An own job as it is given back, with the day since which it rests. */
export type KeptJob = OwnJob & { readonly restingSince?: PlainDate };
