import { daysLeft, suitsOn } from './work-reasons.js';
import { followersOf, spanOf } from './work-span.js';
import { mayBeShared } from './job-pieces.js';
import type { WorkDays } from './work-days.js';
import { costOf, finishDay, placedMinutes, type WorkJob } from './work.js';
import type { WorkPlacing, WorkProblem } from './work.js';

/** What would make a job fit that does not, or not all of it, with all else where it is. */
export interface Remedies {
  /** The day that lacks least, and how many minutes of each who takes part it lacks. */
  readonly hours?: { readonly day: number; readonly minutes: number };
  /** First day on which it would be done if its last day did not count. */
  readonly laterDay?: number;
  /** Jobs whose hours it could take, the cheapest to lose first. */
  readonly instead: readonly number[];
}

const MOST_INSTEAD = 3;
/** Minutes for which a worker may be asked on a day beside their own. */
export type MayAsk = (worker: number, day: number) => number;

/**
 * Hours, a later date, or what could be left undone: each tried, and each enough by itself.
 *
 * @param byDay last day by which it shall be done, where that is before its own
 * @param mayAsk left out, anybody may be asked for any number of hours
 */
export function remediesFor(
  problem: WorkProblem,
  plan: WorkPlacing,
  index: number,
  { byDay = Infinity, mayAsk = () => Infinity }: { byDay?: number; mayAsk?: MayAsk } = {},
): Remedies {
  const asked = problem.jobs[index]!;
  const job = { ...asked, untilDay: Math.min(asked.untilDay, byDay) };
  const { from, until: before } = spanOf(job, followersOf(problem)[index]!, plan);
  if (from < 0 || job.able.length < job.peopleNeeded) return { instead: [] };
  const days = daysLeft(problem, plan);
  days.giveBack(job, plan[index]!);
  const span = { from: Math.max(0, from), before };
  const hours = hoursFor(problem, job, days, { ...span, mayAsk });
  const later = days.put({ ...job, untilDay: problem.days - 1 }, span.from, before);
  days.giveBack(job, later);
  return {
    ...(hours ? { hours } : {}),
    ...(isWhole(job, later) ? { laterDay: finishDay(later) } : {}),
    instead: insteadOf(problem, plan, index, { job, days, span }),
  };
}

const isWhole = (job: WorkJob, pieces: WorkPlacing[number]): boolean =>
  placedMinutes(pieces) === job.minutes;

/** Days between what a job waits for and what waits for it. */
interface Span {
  readonly from: number;
  readonly before: number;
}

function hoursFor(
  problem: WorkProblem,
  job: WorkJob,
  days: WorkDays,
  { from, before, mayAsk }: Span & { readonly mayAsk: MayAsk },
): Remedies['hours'] {
  const last = Math.min(job.untilDay, before, problem.days - 1);
  const pieces = days.put(job, from, before);
  days.giveBack(job, pieces);
  let best: Remedies['hours'];
  for (let day = from; day <= last; day++) {
    if (!suitsOn(job, day)) continue;
    const there = Math.max(days.together(job, day), minutesOn(pieces, day));
    const open = job.minutes - placedMinutes(pieces) + minutesOn(pieces, day);
    const lacks = open - there;
    if (lacks <= 0) continue;
    // A few minutes that those who are there have are too short a piece beside a helper’s.
    const minutes = isDoneBeside(job, days, { from, before }, lacks) ? lacks : open;
    if (best && best.minutes <= minutes) continue;
    const isAsked = job.able.every((w) => minutes <= mayAsk(w, day));
    if (isAsked && isEnough(job, days, { from, before }, { day, minutes })) best = { day, minutes };
  }
  return best;
}

/** Minutes of a day that pieces have: of several people where each has one. */
const minutesOn = (pieces: WorkPlacing[number], day: number): number =>
  placedMinutes(pieces.filter((piece) => piece.day === day));

/** Whether the rest of what may be spread fits when somebody else does so much of it. */
function isDoneBeside(
  job: WorkJob,
  days: WorkDays,
  { from, before }: Span,
  minutes: number,
): boolean {
  if (job.smallestPieceMinutes === undefined) return true;
  const rest = { ...job, minutes: job.minutes - minutes };
  const pieces = days.put(rest, from, before);
  days.giveBack(job, pieces);
  return isWhole(rest, pieces);
}

/**
 * Whether all of a job fits when those who take part have more time on a day: of several who can be
 * at it, each with a piece, one is enough.
 */
function isEnough(
  job: WorkJob,
  days: WorkDays,
  { from, before }: Span,
  { day, minutes }: { day: number; minutes: number },
): boolean {
  const who = mayBeShared(job) ? job.able.map((w) => [w]) : [job.able];
  return who.some((workers) => {
    days.lend(job, { day, workers }, minutes);
    const pieces = days.put(job, from, before);
    days.giveBack(job, pieces);
    days.lend(job, { day, workers }, -minutes);
    return isWhole(job, pieces);
  });
}

/** What waits for a struck-out job waits no longer, so that only its own hours are at stake. */
function insteadOf(
  { jobs }: WorkProblem,
  plan: WorkPlacing,
  index: number,
  { job, days, span }: { job: WorkJob; days: WorkDays; span: Span },
): number[] {
  const cost = costOf(job, plan[index]!);
  const needed = neededFor(jobs, index);
  return plan
    .map((pieces, i) => ({ i, pieces, lostCost: jobs[i]!.lostCost }))
    .filter(({ i, pieces }) => !jobs[i]!.pinned && 0 < pieces.length && !needed.has(i))
    .filter(({ lostCost }) => lostCost <= cost)
    .sort((a, b) => a.lostCost - b.lostCost)
    .filter(({ i, pieces }) => {
      days.giveBack(jobs[i]!, pieces);
      const fits = days.put(job, span.from, span.before);
      days.giveBack(job, fits);
      pieces.forEach((piece) => days.take(jobs[i]!, piece));
      return isWhole(job, fits);
    })
    .slice(0, MOST_INSTEAD)
    .map(({ i }) => i);
}

/** A job and all that it waits for, however far back. */
function neededFor(jobs: readonly WorkJob[], index: number): Set<number> {
  const needed = new Set([index]);
  for (const i of needed) for (const { job } of jobs[i]!.waitsFor) needed.add(job);
  return needed;
}
