import { addDays } from '../../calendar/plain-date.js';
import { daysLeft } from '../../schedule/work-reasons.js';
import { remediesFor, type MayAsk } from '../../schedule/work-remedies.js';
import { drawEarlier } from '../../schedule/work-settling.js';
import { followersOf, spanOf } from '../../schedule/work-span.js';
import { workNetwork } from '../../schedule/work-network.js';
import type { WorkWindow } from '../../schedule/work-windows.js';
import { finishDay, placedMinutes, type WorkPiece, type WorkProblem } from '../../schedule/work.js';
import { formatHours } from '../../units/format.js';
import { listed } from '../../units/listed.js';
import { mayBeAskedFor } from './most-of-day.js';
import type { WholeWork } from './whole-work.js';
import { dayText } from './work-words.js';

/** Work that is done in time as somebody stays a few minutes longer. */
export interface LongerDays {
  readonly work: WholeWork;
  /** Minutes beyond the hours there are, by the index of the work; they belong to its last piece. */
  readonly minutes: ReadonlyMap<number, number>;
}

/**
 * The plan as a household does it: for want of a few minutes nothing is left for another day. All
 * else stays where it is, and the plan itself is kept as it was found.
 *
 * @param mostMinutes that somebody stays longer on a day, at most
 */
export function withLongerDays(
  work: WholeWork,
  windows: readonly WorkWindow[],
  mostMinutes: number,
): LongerDays {
  const minutes = new Map<number, number>();
  const stayed = new Set<string>();
  const freed = { jobs: new Uint8Array(windows.length), days: new Uint8Array(work.problem.days) };
  const { request } = work;
  const mayAsk: MayAsk = (w, day) =>
    Math.min(mostMinutes, mayBeAskedFor(request.people[w]!, addDays(request.today, day), request));
  let { problem } = work;
  let plan = [...work.fitted.plan];
  for (const [i, { latestDay }] of windows.entries()) {
    const lastDay = Math.min(latestDay, problem.jobs[i]!.untilDay);
    if (isInTime(problem, plan, i, lastDay)) continue;
    const limits = { byDay: lastDay, mayAsk };
    const short = remediesFor(problem, plan, i, limits).hours?.minutes;
    if (short === undefined) continue;
    const found = placedShorter({ problem, plan }, i, lastDay, short);
    const last = found?.at(-1);
    if (!found || !last) continue;
    const days = last.workers.map((worker) => `${worker} ${last.day}`);
    if (days.some((day) => stayed.has(day))) continue;
    for (const day of days) stayed.add(day);
    for (const { day } of plan[i]!) freed.days[day] = 1;
    minutes.set(i, short);
    problem = withFewer(problem, i, short);
    plan = plan.map((pieces, j) => (j === i ? found : pieces));
  }
  if (minutes.size === 0) return { work, minutes };
  const days = daysLeft(problem, plan);
  const network = workNetwork(problem.jobs);
  const followers = followersOf(problem);
  // What was put off for the hours that are free now need not wait.
  drawEarlier({ problem, network, followers, pieces: plan, days, earlier: undefined }, freed);
  const fitted = { ...work.fitted, plan };
  return { work: { ...work, problem, fitted, left: daysLeft(problem, plan) }, minutes };
}

type Plan = readonly (readonly WorkPiece[])[];

function isInTime({ jobs }: WorkProblem, plan: Plan, i: number, lastDay: number): boolean {
  const job = jobs[i]!;
  const isWhole = placedMinutes(plan[i]!) === job.minutes;
  return lastDay < 0 || job.pinned !== undefined || (isWhole && finishDay(plan[i]!) <= lastDay);
}

const withFewer = (problem: WorkProblem, i: number, short: number): WorkProblem => ({
  ...problem,
  jobs: problem.jobs.map((job, j) => (j === i ? { ...job, minutes: job.minutes - short } : job)),
});

/** Work of a few minutes less on the days that are left for it; undefined where that has no room. */
function placedShorter(
  { problem, plan }: { readonly problem: WorkProblem; readonly plan: Plan },
  i: number,
  untilDay: number,
  short: number,
): readonly WorkPiece[] | undefined {
  const job = problem.jobs[i]!;
  const shorter = { ...job, minutes: job.minutes - short, untilDay };
  if (shorter.minutes <= short) return undefined;
  const left = daysLeft(problem, plan);
  left.giveBack(job, plan[i]!);
  const { from, until } = spanOf(job, followersOf(problem)[i]!, plan);
  const pieces = left.put(shorter, Math.max(0, from), until);
  return placedMinutes(pieces) === shorter.minutes ? pieces : undefined;
}

/** Who stays longer for work, and by how much; empty where nobody does. */
export function stayWords(
  { request, fitted }: WholeWork,
  index: number,
  minutes: ReadonlyMap<number, number>,
): string {
  const stays = minutes.get(index);
  const last = fitted.plan[index]!.at(-1);
  if (stays === undefined || !last) return '';
  const names = last.workers.map((w) => request.people[w]!.name);
  const longer = `${formatHours(stays / 60)} longer on ${dayText(request)(last.day)}`;
  return ` ${listed(names)} ${names.length === 1 ? 'stays' : 'stay'} ${longer}.`;
}
