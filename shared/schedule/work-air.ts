import type { WorkProblem } from './work.js';

/** Minutes of somebody that work with time enough leaves free on a day. */
export function airOf({ workers, air }: WorkProblem, worker: number, day: number): number {
  const minutes = air ? Math.round(air.share * workers[worker]!.minutes[day]!) : 0;
  return air && air.leastMinutes <= minutes ? minutes : 0;
}

/** Of a list of jobs they are worked out once. */
const known = new WeakMap<WorkProblem['jobs'], Uint8Array>();

/**
 * 1 for work that can leave hours free: what waits for fit weather takes the first day it can, and what
 * follows other work within some days, or is followed so, cannot choose.
 */
export function mayWait({ jobs }: WorkProblem): Uint8Array {
  const before = known.get(jobs);
  if (before) return before;
  const may = Uint8Array.from(jobs, (job) => (job.pinned || job.takesFirstDay ? 0 : 1));
  jobs.forEach(({ waitsFor }, i) => {
    for (const { job, atMostDays } of waitsFor) if (atMostDays !== undefined) may[i] = may[job] = 0;
  });
  known.set(jobs, may);
  return may;
}
