import { addDays, daysBetween, weekdayOf, type PlainDate } from '../calendar/plain-date.js';
import type { OwnJob } from './job.js';
import type { Repeats } from './repeats.js';
import { formatWeekday } from '../units/dates.js';

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

/** How often it comes, in words. */
export function repeatWords({ every, weekdays = [], everyDays = 1 }: Repeats): string {
  if (every === 'day') return 'every day';
  if (every === 'days') return everyWords(everyDays);
  const days = [...new Set(weekdays)].sort((a, b) => a - b).map(formatWeekday);
  return `every ${days.join(', ').replace(/, ([^,]*)$/, ' and $1')}`;
}

function everyWords(days: number): string {
  if (days % WEEK_DAYS !== 0) return `every ${days} days`;
  return days === WEEK_DAYS ? 'every week' : `every ${days / WEEK_DAYS} weeks`;
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

/** Key of one time of a job that comes again, by which it is ticked. */
export const keyOfTime = (jobId: string, on: PlainDate): string => `own/${jobId}/${on}`;

/** The job that such a key is a time of; undefined of other work. */
export const jobOfTime = (key: string): string | undefined =>
  /^own\/([^/]+)\/\d{4}-\d\d-\d\d$/.exec(key)?.[1];

/** The times of one job that comes again, of a list of work in the order of its dates. */
export interface Series<T> {
  readonly next: T;
  readonly later: readonly T[];
  /** How often it comes; left out of what comes once. */
  readonly often?: string;
}

/** Work with the times of one job in one line, in the place of the first of them. */
export function inSeries<T extends { readonly key: string }>(work: readonly T[]): Series<T>[] {
  const lines = new Map<string, [T, ...T[]]>();
  for (const each of work) {
    const line = timeOf(each.key)?.job ?? each.key;
    const known = lines.get(line);
    if (known) known.push(each);
    else lines.set(line, [each]);
  }
  return [...lines.values()].map(([next, ...later]) => {
    const dates = [next, ...later].flatMap(({ key }) => timeOf(key)?.on ?? []).sort();
    const gaps = dates.slice(1).map((date, k) => daysBetween(dates[k]!, date));
    return { next, later, ...(gaps.length === 0 ? {} : { often: everyWords(Math.min(...gaps)) }) };
  });
}

/** The job and the day of one time of repeated work; undefined of other work. */
export function timeOf(key: string): { readonly job: string; readonly on: PlainDate } | undefined {
  const [, job, on] = /^(own\/[^/]+)\/(\d{4}-\d{2}-\d{2})$/.exec(key) ?? [];
  return job === undefined || on === undefined ? undefined : { job, on };
}
