import { mayWait } from './work-margin.js';
import { WorkDays } from './work-days.js';
import { followersOf, freeFrom, spanOf } from './work-span.js';
import { finishDay, placedMinutes, type WorkJob, type WorkPiece } from './work.js';
import type { WorkPlacing, WorkProblem } from './work.js';

/** Why a job is not on a day that lies before its place. */
export type DayRefusal =
  | 'does-not-suit'
  | 'no-light'
  | 'no-hours'
  /** It has time enough, and the hours that are left are kept for what has not. */
  | 'kept-free'
  | 'kept-its-place';

/** What put a job on its day: enough to say it in words. */
export interface PlacementReason {
  /** First day that its own dates and what it waits for allow. */
  readonly allowedFrom: number;
  /** The job whose end sets that day, when its own first day does not. */
  readonly heldBy?: number;
  /** The job that follows within some days, and the first day that leaves it where it is. */
  readonly followedBy?: { readonly job: number; readonly from: number };
  readonly refused: readonly { readonly day: number; readonly because: DayRefusal }[];
  /** Days from the finish to the last day that costs nothing. */
  readonly spareDays: number;
  /** Next days that suit it after its place, within its dates. */
  readonly laterDays: readonly number[];
}

/** Why a job is not in a plan. */
export type UnfitBecause =
  | 'past'
  | 'beyond-the-end'
  | 'closed-window'
  | 'too-few-able'
  | 'waits-for-unfit'
  | 'waits-too-long'
  | 'never-suits'
  | 'nobody-there'
  | 'too-few-at-once'
  | 'longer-than-any-day'
  | 'too-few-hours'
  | 'holds-up'
  | 'none-soon-enough'
  | 'no-room-found';

/** Days the plan leaves free, all jobs in it taken off. */
export function daysLeft(problem: WorkProblem, plan: WorkPlacing): WorkDays {
  const days = new WorkDays(problem);
  plan.forEach((pieces, i) => {
    const job = problem.jobs[i]!;
    if (!job.pinned) pieces.forEach((piece) => days.take(job, piece));
  });
  return days;
}

const MOST_LATER_DAYS = 2;

/**
 * Why a job of a plan stands where it does. A day before its place either does not suit it, or has
 * too few hours left, or would do: then the job stayed with an earlier plan.
 *
 * @param left what the plan leaves free; worked out when it is not handed in
 */
export function placementReason(
  problem: WorkProblem,
  plan: WorkPlacing,
  index: number,
  left: WorkDays = daysLeft(problem, plan),
): PlacementReason {
  const job = problem.jobs[index]!;
  const least = Math.min(job.minutes, job.smallestPieceMinutes ?? job.minutes);
  const allowedFrom = Math.max(0, freeFrom(job, plan));
  const followers = followersOf(problem)[index]!;
  const span = spanOf(job, followers, plan);
  const soonest = Math.max(0, span.from);
  const heldBy = job.waitsFor.find(
    (w) => job.fromDay < allowedFrom && finishDay(plan[w.job]!) + w.days === allowedFrom,
  )?.job;
  const first = plan[index]![0]!.day;
  const finish = finishDay(plan[index]!);
  const refused: { day: number; because: DayRefusal }[] = [];
  let isForFollower = false;
  for (let day = allowedFrom; day < first; day++) {
    const isKeptFree = (): boolean =>
      mayWait(problem).has(job) &&
      left.togetherWithMargin(job, day) < least &&
      waitsForMargin(job, plan[index]!, left, { from: day, until: span.until });
    const because = refusalOn(job, day, { left, least, isKeptFree });
    if (because === 'kept-its-place' && day < soonest) isForFollower = true;
    else refused.push({ day, because });
  }
  const after = followers.find(
    ({ job: next, atMostDays = Infinity }) => plan[next]![0]?.day === soonest + atMostDays,
  );
  const laterDays = [];
  const last = Math.min(job.dueDay, problem.days - 1);
  for (let day = finish + 1; day <= last && laterDays.length < MOST_LATER_DAYS; day++)
    if (suitsOn(job, day)) laterDays.push(day);
  return {
    allowedFrom,
    ...(heldBy === undefined ? {} : { heldBy }),
    ...(isForFollower && after ? { followedBy: { job: after.job, from: soonest } } : {}),
    refused,
    spareDays: job.dueDay - finish,
    laterDays,
  };
}

/** What keeps a job, or a part of it, out of a plan. */
export interface UnfitReason {
  readonly because: UnfitBecause;
  /** What has the hours of its days, the most of them first; where no room was found. */
  readonly takenBy: readonly number[];
  /** What waits for it and would begin later if the rest was done first. */
  readonly holdsUp?: number;
}

/**
 * What keeps a job out of a plan, whole or in part, the plainest cause first. All but
 * `no-room-found`, `holds-up` and `none-soon-enough` hold whatever the order of the work.
 */
export function unfitReason(problem: WorkProblem, plan: WorkPlacing, index: number): UnfitReason {
  const because = hopelessBecause(problem, plan, index);
  if (because) return { because, takenBy: [] };
  if (isTooLateForTie(problem, plan, index)) return { because: 'none-soon-enough', takenBy: [] };
  const holdsUp = heldUpBy(problem, plan, index);
  return holdsUp === undefined
    ? { because: 'no-room-found', takenBy: takersOf(problem, plan, index) }
    : { because: 'holds-up', takenBy: [], holdsUp };
}

function hopelessBecause(
  problem: WorkProblem,
  plan: WorkPlacing,
  index: number,
): UnfitBecause | undefined {
  const job = problem.jobs[index]!;
  const from = freeFrom(job, plan);
  const last = Math.min(job.untilDay, problem.days - 1);
  if (last < 0) return 'past';
  if (problem.days <= job.dueDay) return 'beyond-the-end';
  if (job.able.length < job.peopleNeeded) return 'too-few-able';
  if (from < 0) return 'waits-for-unfit';
  if (last < Math.max(0, job.fromDay)) return 'closed-window';
  const open: number[] = [];
  for (let day = Math.max(0, job.fromDay); day <= last; day++)
    if (suitsOn(job, day)) open.push(day);
  if (open.length === 0) return 'never-suits';
  const whole = new WorkDays(problem);
  const mostBy = (peopleNeeded: number): number =>
    Math.max(...open.map((day) => whole.together({ ...job, peopleNeeded }, day)));
  const most = mostBy(job.peopleNeeded);
  const least = Math.min(job.minutes, job.smallestPieceMinutes ?? job.minutes);
  if (most < least && 1 < job.peopleNeeded && least <= mostBy(1)) return 'too-few-at-once';
  if (most <= 0) return 'nobody-there';
  if (most < least) return 'longer-than-any-day';
  if (placedMinutes(whole.put(job, job.fromDay)) < job.minutes) return 'too-few-hours';
  return last < from ? 'waits-too-long' : undefined;
}

/** Whether a job has room, but none within the days that it may follow in. */
function isTooLateForTie(problem: WorkProblem, plan: WorkPlacing, index: number): boolean {
  const job = problem.jobs[index]!;
  if (job.waitsFor.every(({ atMostDays }) => atMostDays === undefined)) return false;
  return 0 < placedMinutes(daysLeft(problem, plan).put(job, freeFrom(job, plan)));
}

/** What begins before the rest of a job could be done, where there would be room for more of it. */
function heldUpBy(problem: WorkProblem, plan: WorkPlacing, index: number): number | undefined {
  const job = problem.jobs[index]!;
  const pieces = plan[index]!;
  if (pieces.length === 0) return undefined;
  const left = daysLeft(problem, plan);
  left.giveBack(job, pieces);
  if (placedMinutes(left.put(job, freeFrom(job, plan))) <= placedMinutes(pieces)) return undefined;
  const next = problem.jobs.flatMap(({ waitsFor }, i) =>
    0 < plan[i]!.length && waitsFor.some((wait) => wait.job === index) ? [i] : [],
  );
  return next.sort((a, b) => plan[a]![0]!.day - plan[b]![0]!.day)[0];
}

/** Jobs with hours of those who could do a job on its days, the most hours first. */
function takersOf(problem: WorkProblem, plan: WorkPlacing, index: number): number[] {
  const job = problem.jobs[index]!;
  const from = Math.max(0, freeFrom(job, plan));
  const minutesOf = (pieces: readonly WorkPiece[]): number =>
    pieces
      .filter(({ day }) => from <= day && day <= job.untilDay && suitsOn(job, day))
      .reduce(
        (sum, { minutes, workers }) =>
          sum + minutes * workers.filter((w) => job.able.includes(w)).length,
        0,
      );
  return plan
    .map((pieces, i) => ({ i, minutes: i === index ? 0 : minutesOf(pieces) }))
    .filter(({ minutes }) => 0 < minutes)
    .sort((a, b) => b.minutes - a.minutes || a.i - b.i)
    .map(({ i }) => i);
}

function refusalOn(
  job: WorkJob,
  day: number,
  { left, least, isKeptFree }: { left: WorkDays; least: number; isKeptFree: () => boolean },
): DayRefusal {
  if (!suitsOn(job, day)) return 'does-not-suit';
  if (least <= left.together(job, day)) return isKeptFree() ? 'kept-free' : 'kept-its-place';
  const inTheDark =
    job.needsLight === true && least <= left.together({ ...job, needsLight: false }, day);
  return inTheDark ? 'no-light' : 'no-hours';
}

/**
 * Whether a job, put anew from a day on, leaves hours of that day free and begins later: it does not
 * where it would not be in time so, and then an earlier plan kept it where it is.
 */
function waitsForMargin(
  job: WorkJob,
  pieces: readonly WorkPiece[],
  left: WorkDays,
  { from, until }: { readonly from: number; readonly until: number },
): boolean {
  const { leavesMargin } = left;
  left.giveBack(job, pieces);
  left.leavesMargin = true;
  const anew = left.put(job, from, until);
  left.leavesMargin = leavesMargin;
  left.giveBack(job, anew);
  for (const piece of pieces) left.take(job, piece);
  return anew[0]?.day !== from;
}

/** Whether a day suits a job. */
export const suitsOn = ({ suits }: WorkJob, day: number): boolean => !suits || suits[day] === 1;
