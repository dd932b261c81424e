import { playedSky } from '../../schedule/played-sky.js';
import { seededRandom } from '../../schedule/random.js';
import { playYears, type TakenOrder } from '../../schedule/week-play.js';
import { workNetwork } from '../../schedule/work-network.js';
import { inOrderOf } from '../../schedule/work-search.js';
import { workWindows, type WorkWindow } from '../../schedule/work-windows.js';
import type { PlayedJob, YearSuits } from '../../schedule/work-years.js';
import type { WorkJob, WorkProblem } from '../../schedule/work.js';
import type { DaysOfWork } from './days-of-work.js';
import { suitsOfNeeds } from './suits-of-needs.js';
import type { WholeWork } from './whole-work.js';

/** A household's work with the years it is played through, to be played as it is or changed. */
export interface PlayedWork {
  /** Jobs are due when all that waits for them is still in time. */
  readonly problem: WorkProblem;
  readonly windows: readonly WorkWindow[];
  readonly suits: readonly YearSuits[];
  /** Plays the work as it is, or changed, through all years or the first of them. */
  readonly play: (change?: Change) => PlayedJob[];
}

/** What is other than the household has it. */
export interface Change {
  readonly problem?: WorkProblem;
  readonly first?: TakenOrder['first'];
  readonly years?: number;
  /** Played to this day of each year: all that is asked of is due by then. */
  readonly untilDay?: number;
}

/** The plan's order of work, to be played through years of weather. */
export function playedWork(
  { request, needs, problem, fitted }: WholeWork,
  years: readonly DaysOfWork[],
): PlayedWork {
  const network = workNetwork(problem.jobs);
  const windows = workWindows(problem.jobs, network);
  const { forecast, wetDay } = request.tables.work;
  const { rightShares } = forecast;
  const suits = years.map((days) => suitsOfNeeds(needs, days, wetDay.rainMm));
  const runDays = needs.map(({ conditions }) => conditions.dryDaysInRow ?? 1);
  const foreseen = { rightShares, runDays };
  const sky = playedSky(suits, problem.days, foreseen, seededRandom(request.seed));
  const list = inOrderOf(
    network,
    Float64Array.from(needs, (_, i) => fitted.plan[i]![0]?.day ?? windows[i]!.latestDay),
  );
  const due = withLatest(problem, windows);
  return {
    problem: due,
    windows,
    suits,
    play: ({ problem: changed, first, years: count, untilDay } = {}) =>
      playYears(
        changed ? withLatest(changed, windows) : due,
        { list, ...(first === undefined ? {} : { first }) },
        sky,
        { years: count, untilDay },
      ),
  };
}

const withLatest = (problem: WorkProblem, windows: readonly WorkWindow[]): WorkProblem => ({
  ...problem,
  jobs: problem.jobs.map((job, i): WorkJob => ({ ...job, dueDay: windows[i]!.latestDay })),
});
