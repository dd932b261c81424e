import type { ActivityNetwork } from './activity-network.js';
import type { WorkDays } from './work-days.js';
import { freeFrom } from './work-placing.js';
import { finishDay, type WorkPiece, type WorkPlacing, type WorkProblem } from './work.js';

/** Hours that one move frees may let another follow; more rounds than this are never needed. */
const MOST_ROUNDS = 20;

/**
 * Draws every job of a plan to the first days it fits on, so that each stands where it does for a
 * reason: nothing before would do. No job ends later by it, so that no cost rises.
 *
 * @param days with the hours of the plan's jobs taken
 * @param stays jobs that are left where they are, such as those of an earlier plan
 */
export function drawnEarlier(
  problem: WorkProblem,
  { order }: ActivityNetwork,
  plan: WorkPlacing,
  { days, stays }: { days: WorkDays; stays: (index: number) => boolean },
): WorkPiece[][] {
  const pieces = plan.map((each) => [...each]);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let hasMoved = false;
    for (const i of order) {
      const job = problem.jobs[i]!;
      const was = pieces[i]!;
      if (was.length === 0 || job.pinned || stays(i)) continue;
      days.giveBack(job, was);
      const now = days.put(job, freeFrom(job, pieces));
      if (0 < now.length && isEarlier(now, was)) {
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

const isEarlier = (now: readonly WorkPiece[], was: readonly WorkPiece[]): boolean =>
  finishDay(now) < finishDay(was) ||
  (finishDay(now) === finishDay(was) && now[0]!.day < was[0]!.day);
