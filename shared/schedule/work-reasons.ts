import { freeFrom } from './work-placing.js';
import { WorkDays } from './work-days.js';
import { finishDay, type WorkJob, type WorkPlacing, type WorkProblem } from './work.js';

/** Why a job is not on a day that lies before its place. */
export type DayRefusal = 'does-not-suit' | 'no-light' | 'no-hours' | 'kept-its-place';

/** What put a job on its day: enough to say it in words. */
export interface PlacementReason {
  /** First day that its own dates and what it waits for allow. */
  readonly allowedFrom: number;
  /** The job whose end sets that day, when its own first day does not. */
  readonly heldBy?: number;
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
  | 'never-suits'
  | 'nobody-there'
  | 'longer-than-any-day'
  | 'no-hours-left';

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
  const heldBy = job.waitsFor.find(
    (w) => job.fromDay < allowedFrom && finishDay(plan[w.job]!) + w.days === allowedFrom,
  )?.job;
  const first = plan[index]![0]!.day;
  const finish = finishDay(plan[index]!);
  const refused: { day: number; because: DayRefusal }[] = [];
  for (let day = allowedFrom; day < first; day++) {
    refused.push({ day, because: refusalOn(job, day, { left, least }) });
  }
  const laterDays = [];
  const last = Math.min(job.dueDay, problem.days - 1);
  for (let day = finish + 1; day <= last && laterDays.length < MOST_LATER_DAYS; day++)
    if (suitsOn(job, day)) laterDays.push(day);
  return {
    allowedFrom,
    ...(heldBy === undefined ? {} : { heldBy }),
    refused,
    spareDays: job.dueDay - finish,
    laterDays,
  };
}

/** What keeps a job out of a plan, the plainest cause first. */
export function unfitBecause(problem: WorkProblem, plan: WorkPlacing, index: number): UnfitBecause {
  const job = problem.jobs[index]!;
  const from = freeFrom(job, plan);
  const last = Math.min(job.untilDay, problem.days - 1);
  if (last < 0) return 'past';
  if (problem.days <= job.dueDay) return 'beyond-the-end';
  if (job.able.length < job.peopleNeeded) return 'too-few-able';
  if (from < 0) return 'waits-for-unfit';
  if (last < Math.max(0, from)) return 'closed-window';
  const open: number[] = [];
  for (let day = Math.max(0, from); day <= last; day++) if (suitsOn(job, day)) open.push(day);
  if (open.length === 0) return 'never-suits';
  const whole = new WorkDays(problem);
  const most = Math.max(...open.map((day) => whole.together(job, day)));
  if (most <= 0) return 'nobody-there';
  const least = Math.min(job.minutes, job.smallestPieceMinutes ?? job.minutes);
  return most < least ? 'longer-than-any-day' : 'no-hours-left';
}

function refusalOn(
  job: WorkJob,
  day: number,
  { left, least }: { left: WorkDays; least: number },
): DayRefusal {
  if (!suitsOn(job, day)) return 'does-not-suit';
  if (least <= left.together(job, day)) return 'kept-its-place';
  const inTheDark =
    job.needsLight === true && least <= left.together({ ...job, needsLight: false }, day);
  return inTheDark ? 'no-light' : 'no-hours';
}

const suitsOn = ({ suits }: WorkJob, day: number): boolean => !suits || suits[day] === 1;

/** What would make a job fit that does not. */
export interface Remedies {
  /** The day that lacks least, and how many minutes of each who takes part it lacks. */
  readonly hours?: { readonly day: number; readonly minutes: number };
  /** First day on which it would be done if its last day did not count. */
  readonly laterDay?: number;
  /** Jobs whose hours it could take, the cheapest to lose first. */
  readonly instead: readonly number[];
}

const MOST_INSTEAD = 3;

/** Hours, a later date, or what could be dropped for a job that is not in a plan. */
export function remediesFor(problem: WorkProblem, plan: WorkPlacing, index: number): Remedies {
  const job = problem.jobs[index]!;
  const from = freeFrom(job, plan);
  if (from < 0 || job.able.length < job.peopleNeeded) return { instead: [] };
  const last = Math.min(job.untilDay, problem.days - 1);
  const left = daysLeft(problem, plan);
  let hours: Remedies['hours'];
  let spread = 0;
  for (let day = Math.max(0, from); day <= last; day++) {
    if (!suitsOn(job, day)) continue;
    const together = left.together(job, day);
    spread += together;
    const lacks = job.minutes - (job.smallestPieceMinutes === undefined ? together : spread);
    if (0 < lacks && (!hours || lacks < hours.minutes)) hours = { day, minutes: lacks };
  }
  const later = left.put({ ...job, untilDay: problem.days - 1 }, Math.max(0, from));
  left.giveBack(job, later);
  const instead = plan
    .map((pieces, i) => ({ i, pieces }))
    .filter(({ i, pieces }) => !problem.jobs[i]!.pinned && 0 < pieces.length)
    .filter(({ i }) => problem.jobs[i]!.lostCost < job.lostCost)
    .sort((a, b) => problem.jobs[a.i]!.lostCost - problem.jobs[b.i]!.lostCost)
    .filter(({ i, pieces }) => {
      const other = problem.jobs[i]!;
      left.giveBack(other, pieces);
      const fits = left.put(job, Math.max(0, from));
      left.giveBack(job, fits);
      pieces.forEach((piece) => left.take(other, piece));
      return 0 < fits.length;
    })
    .slice(0, MOST_INSTEAD);
  return {
    ...(hours ? { hours } : {}),
    ...(0 < later.length ? { laterDay: finishDay(later) } : {}),
    instead: instead.map(({ i }) => i),
  };
}
