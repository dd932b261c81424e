import { addDays, type PlainDate } from '../calendar/plain-date.js';
import type { OwnJob, Progress } from './job.js';

/** Days after which a job that is done goes to rest; common practice, no source. */
const DONE_DAYS = 30;
/** Days after which a job that was lost for its year goes to rest; common practice, no source. */
const LOST_DAYS = 366;

/**
 * The day on which a job went to rest: it is kept, but takes no place among the jobs there may be
 * and is no longer planned. Undefined for a job that does not rest yet.
 *
 * @param mark what became of it
 */
export function restingSince(
  job: Pick<OwnJob, 'noUseAfter'>,
  mark: Omit<Progress, 'key'> | undefined,
  today: PlainDate,
): PlainDate | undefined {
  const since =
    mark?.doneOn !== undefined
      ? addDays(mark.doneOn, DONE_DAYS)
      : job.noUseAfter && addDays(job.noUseAfter, LOST_DAYS);
  return since !== undefined && since <= today ? since : undefined;
}

/** An own job as it is given back, with the day since which it rests. */
export type KeptJob = OwnJob & { readonly restingSince?: PlainDate };
