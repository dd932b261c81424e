import { WorkDays } from './work-days.js';
import { placeInOrder } from './work-placing.js';
import { doneDay, type WorkProblem } from './work.js';

/** How a job fares over many years of weather. */
export interface JobChance {
  /** Share of years in which it is done by its due day. */
  readonly onTime: number;
  /** Share of years in which it is never done. */
  readonly lost: number;
  /** Day by which it is done in half of the years, and in nearly all; -1 when it is not. */
  readonly halfDoneDay: number;
  readonly mostDoneDay: number;
  /** Standard error of `onTime`, from the number of years alone. */
  readonly standardError: number;
}

/** Days that suit each job in one year; `undefined` where all do. */
export type YearSuits = readonly (Uint8Array | undefined)[];

/**
 * Plays one plan's order of work through many years: every year the jobs are taken in the same
 * order, each on the first days that suit it in that year.
 *
 * The order is the same in every year and knows nothing of its weather. What is foreseen is only
 * that a job which would not be finished by its last day is not begun: chances of the others come
 * out a little too good by the hours that saves.
 *
 * @param sureShare share of years that is called nearly all
 *
 * Source: Monte Carlo estimate of a share, standard error √(p(1 − p)/n).
 */
export function chancesOverYears(
  problem: WorkProblem,
  list: Int32Array,
  years: readonly YearSuits[],
  sureShare: number,
): JobChance[] {
  const finishes = problem.jobs.map(() => new Int32Array(years.length));
  const days = new WorkDays(problem);
  years.forEach((suits, y) => {
    const jobs = problem.jobs.map((job, i) => {
      const own = suits[i];
      return own ? { ...job, suits: own } : job;
    });
    const { pieces } = placeInOrder({ ...problem, jobs }, days, list);
    pieces.forEach((each, i) => (finishes[i]![y] = doneDay(problem.jobs[i]!, each)));
  });
  return problem.jobs.map((job, i) => chanceOf(finishes[i]!, job.dueDay, sureShare));
}

function chanceOf(finishes: Int32Array, dueDay: number, sureShare: number): JobChance {
  const n = finishes.length;
  const lost = finishes.reduce((sum, day) => sum + (day < 0 ? 1 : 0), 0);
  const onTime = finishes.reduce((sum, day) => sum + (0 <= day && day <= dueDay ? 1 : 0), 0) / n;
  const done = finishes.filter((day) => 0 <= day).sort();
  const dayOf = (share: number): number => done[Math.ceil(share * n) - 1] ?? -1;
  return {
    onTime,
    lost: lost / n,
    halfDoneDay: dayOf(0.5),
    mostDoneDay: dayOf(sureShare),
    standardError: Math.sqrt((onTime * (1 - onTime)) / n),
  };
}
