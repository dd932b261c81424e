import { mayBeShared } from './job-pieces.js';
import { WorkDays } from './work-days.js';
import { followersOf, freeFrom, putWithBefore, spanOf } from './work-span.js';
import { costOf, type WorkPiece, type WorkPlacing, type WorkProblem } from './work.js';

/** Cost of a plan, and what it is made of. */
export interface PlacedWork {
  readonly pieces: (readonly WorkPiece[])[];
  readonly cost: number;
}

/**
 * The serial scheme for work in hours: each job of a list, in turn, on the earliest days that
 * suit it and on which enough people have the time. As no cost falls when a job is done earlier,
 * some list gives a best plan.
 *
 * Source: serial schedule generation, Kolisch (1996), with capacity by day.
 *
 * @param list every job once, none before one that it waits for
 * @param was pieces of an earlier plan, kept wherever they still fit and cost nothing
 */
export function placeInOrder(
  problem: WorkProblem,
  days: WorkDays,
  list: Int32Array,
  was?: WorkPlacing,
): PlacedWork {
  days.reset();
  const pieces: (readonly WorkPiece[])[] = problem.jobs.map(() => []);
  const placed = { problem, followers: followersOf(problem), pieces, days };
  for (const i of list) {
    const job = problem.jobs[i]!;
    const { from, until } = spanOf(job, placed.followers[i]!, pieces);
    if (job.pinned) {
      pieces[i] = [...job.pinned];
    } else if (0 <= from) {
      const before = was?.[i] ?? [];
      const keeps = 0 < before.length && costOf(job, before) === 0;
      pieces[i] =
        keeps && days.putWhereItWas(job, from, before, until)
          ? [...before]
          : days.put(job, from, until);
      if (pieces[i].length === 0) pieces[i] = putWithBefore(placed, i, () => true);
    }
  }
  return { pieces, cost: problem.jobs.reduce((sum, job, i) => sum + costOf(job, pieces[i]!), 0) };
}

/**
 * What no plan can be cheaper than: every job as if it had everyone to itself, after what it
 * waits for did. Of what may be done in part one piece is enough for what waits for it.
 */
export function costBound(problem: WorkProblem, order: Int32Array): number {
  const days = new WorkDays(problem);
  const alone: WorkPiece[][] = problem.jobs.map(() => []);
  let bound = 0;
  for (const i of order) {
    const job = problem.jobs[i]!;
    const from = freeFrom(job, alone);
    if (job.pinned) {
      alone[i] = [...job.pinned];
    } else if (0 <= from) {
      alone[i] = mayBeShared(job) ? days.putByAll(job, from) : days.put(job, from);
      if (!mayBeShared(job)) days.giveBack(job, alone[i]!);
    }
    bound += costOf(job, alone[i]!);
    if (job.smallestPieceMinutes === undefined || job.pinned || from < 0) continue;
    alone[i] = days.begin(job, from, job.untilDay);
    days.giveBack(job, alone[i]!);
  }
  return bound;
}
