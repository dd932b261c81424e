import type { ActivityNetwork } from './activity-network.js';
import type { WorkDays } from './work-days.js';
import { freeFrom } from './work-placing.js';
import { costOf, finishDay, placedMinutes, type WorkJob } from './work.js';
import type { WorkPiece, WorkPlacing, WorkProblem } from './work.js';

/** Hours that one move frees may let another follow; more rounds than this are never needed. */
const MOST_ROUNDS = 20;

/** Costs closer than this are the same. */
const EQUAL = 1e-9;

/**
 * Draws every job of a plan to the first days it fits on, so that each stands where it does for a
 * reason: nothing before would do. What is in it in part takes the hours that are still free. No
 * cost rises by it, and nothing begins before what it waits for.
 *
 * @param days with the hours of the plan's jobs taken
 * @param earlier a plan whose jobs stay where they are, where they stand as they did in it
 */
export function drawnEarlier(
  problem: WorkProblem,
  { order }: ActivityNetwork,
  plan: WorkPlacing,
  days: WorkDays,
  earlier?: WorkPlacing,
): WorkPiece[][] {
  const pieces = plan.map((each) => [...each]);
  const followers = followersOf(problem);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let hasMoved = false;
    for (const i of order) {
      const job = problem.jobs[i]!;
      const was = pieces[i]!;
      if (was.length === 0 || job.pinned) continue;
      const before = earlier?.[i] ?? [];
      const stays = 0 < before.length && isSame(job, was, before);
      if (stays && job.minutes <= placedMinutes(was)) continue;
      days.giveBack(job, was);
      const now = days.put(job, freeFrom(job, pieces), lastDayBefore(followers[i]!, pieces));
      if (isBetter(job, now, was) && (!stays || isSame(job, now, before))) {
        pieces[i] = now;
        hasMoved = true;
      } else {
        days.giveBack(job, now);
        for (const piece of was) days.take(job, piece);
      }
    }
    if (!hasMoved) return pieces;
  }
  return pieces;
}

/** Jobs that wait for each, and how long. */
export type Followers = readonly { readonly job: number; readonly days: number }[];

export function followersOf({ jobs }: WorkProblem): Followers[] {
  const followers = jobs.map((): { job: number; days: number }[] => []);
  jobs.forEach(({ waitsFor }, i) =>
    waitsFor.forEach(({ job, days }) => followers[job]!.push({ job: i, days })),
  );
  return followers;
}

/** Last day of a job that leaves what waits for it where it is. */
export function lastDayBefore(followers: Followers, pieces: WorkPlacing): number {
  let last = Infinity;
  for (const { job, days } of followers) {
    const first = pieces[job]![0];
    if (first) last = Math.min(last, first.day - days);
  }
  return last;
}

function isBetter(job: WorkJob, now: readonly WorkPiece[], was: readonly WorkPiece[]): boolean {
  const cheaper = costOf(job, was) - costOf(job, now);
  if (EQUAL < Math.abs(cheaper)) return 0 < cheaper;
  const more = placedMinutes(now) - placedMinutes(was);
  if (more !== 0) return 0 < more;
  const sooner = finishDay(was) - finishDay(now);
  return 0 < sooner || (sooner === 0 && now[0]!.day < was[0]!.day);
}

/**
 * Whether a job stays where it was: on the days it had, and where all of it had a place on no
 * others.
 */
export const isSame = (
  job: WorkJob,
  now: readonly WorkPiece[],
  was: readonly WorkPiece[],
): boolean =>
  was.every(({ day }) => now.some((piece) => piece.day === day)) &&
  (now.length === was.length || placedMinutes(was) < job.minutes);
