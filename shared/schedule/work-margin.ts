import type { WorkJob, WorkProblem } from './work.js';

/** Minutes of somebody that work with time enough leaves free on a day. */
export function marginOf({ workers, margin }: WorkProblem, worker: number, day: number): number {
  const minutes = margin ? Math.round(margin.share * workers[worker]!.minutes[day]!) : 0;
  return margin && margin.leastMinutes <= minutes ? minutes : 0;
}

/** Of a list of jobs they are worked out once. */
const known = new WeakMap<WorkProblem['jobs'], ReadonlySet<WorkJob>>();

/**
 * Work that can leave hours free: what waits for fit weather takes the first day it can, and what
 * follows other work within some days, or is followed so, cannot choose.
 */
export function mayWait({ jobs }: WorkProblem): ReadonlySet<WorkJob> {
  const before = known.get(jobs);
  if (before) return before;
  const may = new Set(jobs.filter((job) => !job.pinned && !job.takesFirstDay));
  for (const job of jobs)
    for (const { job: before, atMostDays } of job.waitsFor)
      if (atMostDays !== undefined) {
        may.delete(job);
        may.delete(jobs[before]!);
      }
  known.set(jobs, may);
  return may;
}
