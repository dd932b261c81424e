import type { ActivityNetwork } from './activity-network.js';
import type { WorkJob } from './work.js';

/** When a job can be done by the calendar alone, before anyone's hours are known. */
export interface WorkWindow {
  readonly earliestDay: number;
  /** Last day on which it can be finished so that all that waits for it is still on time. */
  readonly latestDay: number;
  /** Days between the two; below 0 the chain does not fit between its dates. */
  readonly spareDays: number;
  /** The job that sets the latest day, when its own due day does not. */
  readonly setBy?: number;
}

type Hung = Pick<WorkJob, 'fromDay' | 'dueDay' | 'waitsFor'>;

/**
 * Earliest and latest day of every job through the chain of what waits for it: a forward and a
 * backward pass of the critical path method, each job taking the day on which it is done.
 *
 * Source: Kelley and Walker, "Critical-Path Planning and Scheduling" (1959).
 */
export function workWindows(jobs: readonly Hung[], network: ActivityNetwork): WorkWindow[] {
  const earliest = new Float64Array(jobs.length);
  for (const i of network.order) {
    const { fromDay, waitsFor } = jobs[i]!;
    earliest[i] = waitsFor.reduce((day, w) => Math.max(day, earliest[w.job]! + w.days), fromDay);
  }
  const latest = Float64Array.from(jobs, (job) => job.dueDay);
  const setBy = new Map<number, number>();
  for (let k = network.count - 1; 0 <= k; k--) {
    const i = network.order[k]!;
    for (const { job, days } of jobs[i]!.waitsFor) {
      if (latest[job]! <= latest[i]! - days) continue;
      latest[job] = latest[i]! - days;
      setBy.set(job, i);
    }
  }
  return jobs.map((_, i) => ({
    earliestDay: earliest[i]!,
    latestDay: latest[i]!,
    spareDays: latest[i]! - earliest[i]!,
    ...(setBy.has(i) ? { setBy: setBy.get(i)! } : {}),
  }));
}
