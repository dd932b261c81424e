import type { WorkDays } from './work-days.js';
import { finishDay, type WorkJob, type WorkPiece, type WorkPlacing } from './work.js';
import type { WorkProblem } from './work.js';

/** First day on which what a job waits for lets it start; -1 when that is not in the plan. */
export function freeFrom(job: WorkJob, pieces: WorkPlacing): number {
  let from = job.fromDay;
  for (const { job: before, days } of job.waitsFor) {
    const done = finishDay(pieces[before]!);
    if (done < 0) return -1;
    from = Math.max(from, done + days);
  }
  return from;
}

/** Jobs that wait for each, and how long. */
export type Followers = readonly {
  readonly job: number;
  readonly days: number;
  readonly atMostDays?: number;
}[];

/** Of a list of jobs they are worked out once: every reason asks for them. */
const known = new WeakMap<WorkProblem['jobs'], readonly Followers[]>();

/** What waits for each job. */
export function followersOf({ jobs }: WorkProblem): readonly Followers[] {
  const before = known.get(jobs);
  if (before) return before;
  const followers = jobs.map((): Followers[number][] => []);
  jobs.forEach(({ waitsFor }, i) =>
    waitsFor.forEach((wait) => followers[wait.job]!.push({ ...wait, job: i })),
  );
  known.set(jobs, followers);
  return followers;
}

/** Days within which a job may lie, whatever its own say; `from` is -1 where it may not at all. */
export interface Span {
  readonly from: number;
  readonly until: number;
}

/** Days that leave all else of a plan where it is. */
export function spanOf(job: WorkJob, followers: Followers, pieces: WorkPlacing): Span {
  let from = freeFrom(job, pieces);
  if (from < 0) return { from, until: -1 };
  let until = Infinity;
  for (const { job: before, atMostDays } of job.waitsFor)
    if (atMostDays !== undefined) until = Math.min(until, finishDay(pieces[before]!) + atMostDays);
  for (const { job: after, days, atMostDays } of followers) {
    const first = pieces[after]![0];
    if (!first) continue;
    until = Math.min(until, first.day - days);
    if (atMostDays !== undefined) from = Math.max(from, first.day - atMostDays);
  }
  return { from, until };
}

/** A plan in the making. */
export interface Placed {
  readonly problem: WorkProblem;
  readonly followers: readonly Followers[];
  readonly pieces: (readonly WorkPiece[])[];
  readonly days: WorkDays;
}

/**
 * Puts work that follows other work within some days, where the other was put too early for that:
 * raked is only once it is known when hay can be baled. The other is put again, later.
 *
 * @param mayMove whether the other job may be put again
 * @returns its pieces, none where no day has room for both
 */
export function putWithBefore(
  placed: Placed,
  i: number,
  mayMove: (before: number) => boolean,
): readonly WorkPiece[] {
  const {
    problem: { jobs },
    followers,
    pieces,
    days,
  } = placed;
  const job = jobs[i]!;
  const tie = job.waitsFor.find(({ atMostDays }) => atMostDays !== undefined);
  if (!tie || jobs[tie.job]!.pinned || !mayMove(tie.job)) return [];
  const { job: at, days: least, atMostDays: most = Infinity } = tie;
  const was = pieces[at]!;
  const free = freeFrom(job, pieces);
  if (free < 0) return [];
  const others = job.waitsFor.filter((wait) => wait !== tie);
  const own = spanOf({ ...job, waitsFor: others }, followers[i]!, pieces);
  const { until } = own;
  // What follows within some days holds it too.
  let from = Math.max(free, own.from);
  const span = spanOf(jobs[at]!, followers[at]!, pieces);
  days.giveBack(jobs[at]!, was);
  for (;;) {
    const found = days.put(job, from, until);
    const [first] = found;
    if (!first) break;
    const last = Math.min(span.until, first.day - least);
    let moved: readonly WorkPiece[] = days.put(
      jobs[at]!,
      Math.max(span.from, first.day - most),
      last,
    );
    if (moved.length === 0 && span.until < first.day - least) {
      // The other is held by what it follows itself: that may move along.
      pieces[i] = found;
      pieces[at] = [];
      moved = putWithBefore(placed, at, mayMove);
      pieces[i] = [];
      pieces[at] = was;
    }
    if (0 < moved.length) {
      pieces[at] = moved;
      return found;
    }
    days.giveBack(job, found);
    from = first.day + 1;
  }
  for (const piece of was) days.take(jobs[at]!, piece);
  return [];
}
