import { daysBetween } from '../../calendar/plain-date.js';
import type { KeptPlan } from '../../farm/kept-plan.js';
import type { FittedWork } from '../../schedule/work-search.js';
import { finishDay, placedMinutes, type WorkPiece, type WorkProblem } from '../../schedule/work.js';
import type { WorkNeed } from './work-need.js';

/**
 * Whether the plan of an earlier day goes on as it was: all that it has from today on stands where it
 * stood, nothing of it is lost that was not, and what is new or was left undone found a place in time.
 * Then there is nothing to look for: another order would only move the household about.
 *
 * @param was pieces of the earlier plan from today on
 */
export function goesOnAsKept(
  problem: WorkProblem,
  needs: readonly WorkNeed[],
  { plan }: Pick<FittedWork, 'plan'>,
  { kept, was, today }: { kept: KeptPlan; was: readonly WorkPiece[][]; today: string },
): boolean {
  return problem.jobs.every((job, i) => {
    if (job.pinned) return true;
    const now = plan[i]!;
    const before = kept.jobs[needs[i]!.key];
    const lostNow = job.minutes - placedMinutes(now);
    const last = before?.pieces.at(-1)?.date;
    const lostBefore = !before ? 0 : last === undefined ? job.minutes : (before.lostMinutes ?? 0);
    const lastDay = last === undefined ? -Infinity : daysBetween(today, last);
    return (
      lostNow <= lostBefore + ROUNDED &&
      was[i]!.every((piece) => now.some((each) => isSame(piece, each))) &&
      (lostNow + ROUNDED < lostBefore ||
        now.length === 0 ||
        finishDay(now) <= Math.max(job.dueDay, lastDay))
    );
  });
}

/** Hours of a part are rounded to minutes. */
const ROUNDED = 1;

const isSame = (a: WorkPiece, b: WorkPiece): boolean =>
  a.day === b.day &&
  Math.abs(a.minutes - b.minutes) <= ROUNDED &&
  a.workers.join() === b.workers.join();
