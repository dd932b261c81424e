import type { PlayedSky } from './played-sky.js';
import { WorkDays } from './work-days.js';
import type { WorkJob, WorkProblem } from './work.js';

/**
 * What of a job can usually be done from each day to its due day, or to its last where that is past
 * then, with its people’s hours kept for it: minutes, or whole days for a job of one day.
 *
 * @returns by job and day, one day more than the problem has
 */
export function usualAhead(
  problem: WorkProblem,
  { kindOf, usual }: Pick<PlayedSky, 'kindOf' | 'usual'>,
): Float64Array[] {
  const togetherOf = crewHours(problem);
  return problem.jobs.map((job, i) => aheadOf(job, togetherOf(job), usual[kindOf[i]!]));
}

/** Minutes of each day that a job’s people have together, worked out once for jobs of one crew. */
export function crewHours(problem: WorkProblem): (job: WorkJob) => Int32Array {
  const whole = new WorkDays(problem);
  const known = new Map<string, Int32Array>();
  return (job) => {
    const key = `${job.peopleNeeded}/${job.needsLight ?? false}/${job.able.join()}`;
    const found =
      known.get(key) ??
      Int32Array.from({ length: problem.days }, (_, day) => whole.together(job, day));
    known.set(key, found);
    return found;
  };
}

function aheadOf(
  job: WorkJob,
  together: Int32Array,
  share: Float64Array | undefined,
): Float64Array {
  const days = together.length;
  const ahead = new Float64Array(days + 1);
  const last = Math.min(job.untilDay, days - 1);
  for (let day = last; Math.max(0, job.fromDay) <= day; day--) {
    const there = together[day]!;
    const isOneDay = job.smallestPieceMinutes === undefined;
    const worth = isOneDay ? Number(job.minutes <= there) : there;
    ahead[day] = ahead[day + 1]! + worth * (share?.[day] ?? 1);
  }
  // Before its first day everything is still ahead; after its due day only what is late.
  ahead.fill(ahead[Math.max(0, job.fromDay)] ?? 0, 0, Math.max(0, job.fromDay));
  const late = ahead[Math.max(0, Math.min(job.dueDay, days - 1) + 1)]!;
  for (let day = 0; day <= job.dueDay && day < ahead.length; day++) ahead[day]! -= late;
  return ahead;
}
