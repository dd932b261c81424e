import { addDays, daysBetween, weekdayOf, type PlainDate } from '../../calendar/plain-date.js';
import type { OwnJob } from '../../farm/job.js';
import type { Repeats } from '../../farm/repeats.js';

/** What comes more often than that is done on its day, like a chore. */
const WEEK_DAYS = 7;

type RepeatedJob = OwnJob & { readonly repeats: Repeats };

export const isRepeated = (job: OwnJob): job is RepeatedJob => job.repeats !== undefined;

/** Days from one time to the next, the longest there are. */
export function daysApart({ every, weekdays = [], everyDays = 1 }: Repeats): number {
  if (every === 'day') return 1;
  if (every === 'days') return everyDays;
  return Math.ceil(WEEK_DAYS / Math.max(1, new Set(weekdays).size));
}

/** Whether it comes more often than once a week. */
export const isOften = ({ repeats }: RepeatedJob): boolean => daysApart(repeats) < WEEK_DAYS;

/** Days on which a job comes between two dates, both included: the first is that on which it is due. */
export function timesBetween(
  { dueOn, repeats }: RepeatedJob,
  from: PlainDate,
  to: PlainDate,
): PlainDate[] {
  const { every, weekdays = [], everyDays = 1, until = to } = repeats;
  const step = every === 'days' ? everyDays : 1;
  const behind = Math.max(0, daysBetween(dueOn, from));
  const first = addDays(dueOn, step * Math.ceil(behind / step));
  const days = Math.floor(daysBetween(first, until < to ? until : to) / step) + 1;
  const dates = Array.from({ length: Math.max(0, days) }, (_, k) => addDays(first, step * k));
  return every === 'weekdays' ? dates.filter((date) => weekdays.includes(weekdayOf(date))) : dates;
}

/** One time of a job that comes again: its dates, which end before the next time begins. */
export function oneTime(job: RepeatedJob, on: PlainDate): OwnJob {
  const { repeats, ...rest } = job;
  const days = daysBetween(job.dueOn, on);
  const lastOfUse = addDays(on, daysApart(repeats) - 1);
  const ownLast = job.noUseAfter && addDays(job.noUseAfter, days);
  return {
    ...rest,
    dueOn: on,
    notBefore: addDays(job.notBefore ?? job.dueOn, days),
    noUseAfter: ownLast !== undefined && ownLast < lastOfUse ? ownLast : lastOfUse,
  };
}
