import type { ActivityNetwork } from './activity-network.js';
import { putWithBefore, spanOf, type Placed } from './work-span.js';
import { costOf, finishDay, placedMinutes, type WorkJob } from './work.js';
import type { WorkPiece, WorkPlacing, WorkProblem } from './work.js';

/** Hours that one move frees may let another follow; more rounds than this are never needed. */
const MOST_ROUNDS = 20;

/** Costs closer than this are the same. */
const EQUAL = 1e-9;

/** An earlier plan, and what it counts for to stay with it. */
export interface EarlierWork {
  readonly plan: WorkPlacing;
  /** Cost of moving one job to other days. */
  readonly costPerMove: number;
  /** What begins before this day and still stands as it did is left there; left out, all may move. */
  readonly staysBeforeDay?: number;
  /** Signature of the problem it was made for; for the same one it is the plan already. */
  readonly madeFor?: string;
}

/** Where a plan may have room that it had not when it was last settled. */
export interface Loose {
  /** Jobs that changed, or that wait for one that did or are waited for by it. */
  readonly jobs: Uint8Array;
  /** Days on which hours were freed. */
  readonly days: Uint8Array;
}

export const allLoose = ({ jobs, days }: WorkProblem): Loose => ({
  jobs: new Uint8Array(jobs.length).fill(1),
  days: new Uint8Array(days).fill(1),
});

/** A plan that is settled, and what that needs. */
export interface Settling extends Placed {
  readonly network: ActivityNetwork;
  /** Jobs stay where they are that stand as they did in it. */
  readonly earlier: EarlierWork | undefined;
}

/**
 * Whether a job may come to end in a piece too small to be useful: `in-useful-pieces` only where it
 * begins earlier or more of it is done by that.
 */
export type PieceRule = 'in-any-pieces' | 'in-useful-pieces';

/**
 * Draws every job of a plan to the first days it fits on, so that each stands where it does for a
 * reason: nothing before would do. What has no place or only in part takes the hours that are still
 * free. No cost rises by it, and nothing begins before what it waits for.
 *
 * @param loose where to look; is empty afterward
 */
export function drawEarlier(plan: Settling, loose: Loose, rule: PieceRule = 'in-any-pieces'): void {
  const { order } = plan.network;
  const open = { jobs: loose.jobs.slice(), days: loose.days.slice() };
  loose.jobs.fill(0);
  loose.days.fill(0);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const next = { jobs: new Uint8Array(open.jobs.length), days: new Uint8Array(open.days.length) };
    let hasMoved = false;
    for (const i of order) {
      if (!mayMove(plan, open, i)) continue;
      const was = [i, ...tiedTo(plan, i)].map((job) => [job, plan.pieces[job]!] as const);
      if (!drawnEarlier(plan, i, rule)) continue;
      hasMoved = true;
      for (const [job, pieces] of was)
        if (pieces !== plan.pieces[job])
          for (const marks of [open, next]) loosen(plan, marks, job, pieces);
    }
    if (!hasMoved) return;
    open.jobs = next.jobs;
    open.days = next.days;
  }
}

/** Work that a job follows within some days: it may move along with it. */
const tiedTo = ({ problem }: Settling, i: number): number[] =>
  problem.jobs[i]!.waitsFor.flatMap(({ job, atMostDays }) =>
    atMostDays === undefined ? [] : [job],
  );

/** Marks what the move of a job may give room to. */
export function loosen(
  { problem, followers }: Pick<Settling, 'problem' | 'followers'>,
  { jobs, days }: Loose,
  i: number,
  was: readonly WorkPiece[],
): void {
  jobs[i] = 1;
  for (const { job } of followers[i]!) jobs[job] = 1;
  for (const { job } of problem.jobs[i]!.waitsFor) jobs[job] = 1;
  for (const { day } of was) days[day] = 1;
}

function mayMove({ problem, pieces }: Settling, { jobs, days }: Loose, i: number): boolean {
  const job = problem.jobs[i]!;
  const was = pieces[i]!;
  if (job.pinned || job.able.length < job.peopleNeeded) return false;
  if (jobs[i] === 1) return true;
  const isPart = placedMinutes(was) < job.minutes;
  const last = isPart ? Math.min(job.untilDay, problem.days - 1) : finishDay(was);
  for (let day = Math.max(0, job.fromDay); day <= last; day++) if (days[day] === 1) return true;
  return false;
}

function drawnEarlier(plan: Settling, i: number, rule: PieceRule): boolean {
  const { problem, pieces, days, followers, earlier } = plan;
  const job = problem.jobs[i]!;
  const was = pieces[i]!;
  const { from, until } = spanOf(job, followers[i]!, pieces);
  if (from < 0) return false;
  const before = earlier?.plan[i] ?? [];
  const moved = movedShare(job, was, before);
  const stays = 0 < before.length && moved === 0;
  if (stays && job.minutes <= placedMinutes(was)) return false;
  const takes = (now: WorkPiece[], than: IsBetter): boolean => {
    if (than(job, now, was) && movedShare(job, now, before) <= moved) {
      pieces[i] = now;
      return true;
    }
    days.giveBack(job, now);
    return false;
  };
  days.giveBack(job, was);
  const isTaken =
    rule === 'in-any-pieces'
      ? takes(days.put(job, from, until), isSooner)
      : takes(days.putInUsefulPieces(job, from, until), beginsSooner) ||
        takes(days.put(job, from, until), beginsSooner);
  if (!isTaken) for (const piece of was) days.take(job, piece);
  return isTaken || drawnWithBefore(plan, i);
}

/** Draws work earlier together with what it follows within some days: neither can move alone. */
function drawnWithBefore(plan: Settling, i: number): boolean {
  const { problem, pieces, days, followers, earlier } = plan;
  const tie = problem.jobs[i]!.waitsFor.find(({ atMostDays }) => atMostDays !== undefined);
  const both = tie ? [tie.job, i] : [];
  const was = both.map((k) => pieces[k]!);
  if (!tie || was.some(({ length }) => length === 0) || problem.jobs[tie.job]!.pinned) return false;
  for (const k of [i, tie.job]) {
    days.giveBack(problem.jobs[k]!, pieces[k]!);
    pieces[k] = [];
  }
  for (const k of both) {
    const job = problem.jobs[k]!;
    const { from, until } = spanOf(job, followers[k]!, pieces);
    if (0 <= from) pieces[k] = days.put(job, from, until);
  }
  if (pieces[i]!.length === 0 && 0 < pieces[tie.job]!.length)
    pieces[i] = putWithBefore(plan, i, (before) => before === tie.job);
  const isBetter = both.every((k, at) => {
    const before = earlier?.plan[k] ?? [];
    const job = problem.jobs[k]!;
    return (
      (k === i ? isSooner(job, pieces[k]!, was[at]!) : isNoDearer(job, pieces[k]!, was[at]!)) &&
      movedShare(job, pieces[k]!, before) <= movedShare(job, was[at]!, before)
    );
  });
  if (isBetter) return true;
  both.forEach((k, at) => {
    days.giveBack(problem.jobs[k]!, pieces[k]!);
    pieces[k] = was[at]!;
    for (const piece of was[at]!) days.take(problem.jobs[k]!, piece);
  });
  return false;
}

const isNoDearer: IsBetter = (job, now, was) => 0 <= gain(job, now, was);

type IsBetter = (job: WorkJob, now: readonly WorkPiece[], was: readonly WorkPiece[]) => boolean;

/** Costs less, or has more of it done, or is finished sooner and else begun sooner. */
const isSooner: IsBetter = (job, now, was) => {
  const better = gain(job, now, was);
  const sooner = finishDay(was) - finishDay(now);
  return better === 0 ? 0 < sooner || (sooner === 0 && now[0]!.day < was[0]!.day) : 0 < better;
};

/** Costs less, or has more of it done, or is begun sooner, whenever it is finished. */
const beginsSooner: IsBetter = (job, now, was) => {
  const better = gain(job, now, was);
  return better === 0 ? now[0]!.day < was[0]!.day : 0 < better;
};

/** Above 0 where pieces cost less than others or, as cheap, hold more of the work. */
function gain(job: WorkJob, now: readonly WorkPiece[], was: readonly WorkPiece[]): number {
  if (now.length === 0) return -1;
  const cheaper = costOf(job, was) - costOf(job, now);
  return EQUAL < Math.abs(cheaper) ? cheaper : placedMinutes(now) - placedMinutes(was);
}

/** Share of the cost of moving that other people or hours on the days of before count for. */
const OTHER_HANDS = 0.5;

/**
 * How far a job moved from where it was: 0 with the same people for as long on the days it had and
 * on no others, 1 on other days. Of what had no place for a part, more is no move.
 */
export function movedShare(
  job: WorkJob,
  now: readonly WorkPiece[],
  was: readonly WorkPiece[],
): number {
  if (now === was || was.length === 0) return 0;
  const wasWhole = job.minutes <= placedMinutes(was);
  if (now.length < was.length || (wasWhole && was.length < now.length)) return 1;
  let share = 0;
  let k = 0;
  for (const { day, minutes, workers } of was) {
    while (k < now.length && now[k]!.day < day) k++;
    const piece = now[k];
    if (piece?.day !== day) return 1;
    // Of a day on which several have a piece each is held against its own.
    k++;
    const asLong = wasWhole ? piece.minutes === minutes : minutes <= piece.minutes;
    if (!asLong || !workers.every((w, at) => piece.workers[at] === w)) share = OTHER_HANDS;
  }
  return share;
}
