import { performance } from 'node:perf_hooks';
import { goodPlans, MOST_LOOKS } from '../../shared/plan/work/fitted-work.js';
import { seededRandom } from '../../shared/schedule/random.js';
import { fitWork } from '../../shared/schedule/work-search.js';
import type { WorkProblem } from '../../shared/schedule/work.js';
import { randomHousehold } from '../support/random-households.js';

/** Plans tried for a first, a good and a next one, as a plan of the work does. */
const FIRST_PLANS = 1;
const AGAIN_PLANS = 700;
const YEAR = { days: 380, people: 3, jobs: 150, load: 0.8 };
const LARGE = { days: 380, people: 50, jobs: 200, load: 0.9 };
const LARGE_HOURS = 500;
const RUNS = 9;

type Print = (name: string, value: number, unit: string, runs: number) => void;

/** @param print prints one figure: name, value, unit, number of runs */
export function benchWorkSpeed(print: Print): void {
  const problem = randomHousehold(seededRandom(3), YEAR);
  const fit = (plans: number) => fitWork(problem, { plans }, seededRandom(5));
  const first = timed(() => fit(FIRST_PLANS));
  print('work, 150 jobs, 3 people, a year: first plan, nothing warm', first.ms, 'ms', 1);
  const good = timed(() => fit(goodPlans(YEAR.jobs)));
  print('work, good plan, nothing warm', good.ms, 'ms', 1);
  print(
    'work, good plan',
    medianMs(() => fit(goodPlans(YEAR.jobs))),
    'ms',
    RUNS,
  );
  print('work, cost of the first plan over its bound', first.value.cost / first.value.bound, '', 1);
  print('work, cost of the good plan over its bound', good.value.cost / good.value.bound, '', 1);
  const earlier = { plan: good.value.plan, costPerMove: 3 };
  const away = withoutFirstOn(problem, 20, 24);
  const again = () => fitWork(away, { plans: AGAIN_PLANS }, seededRandom(5), earlier);
  print('work, plan again when one is away for four days', medianMs(again), 'ms', RUNS);
  const large = longJobs(randomHousehold(seededRandom(4), LARGE));
  const within = timed(() =>
    fitWork(large, { plans: Infinity, looks: MOST_LOOKS }, seededRandom(5)),
  );
  print('work, 200 jobs of 500 h, 50 people, as long as a plan may take', within.ms, 'ms', 1);
  print('work, of these the cost over its bound', within.value.cost / within.value.bound, '', 1);
}

function timed<T>(work: () => T): { value: T; ms: number } {
  const start = performance.now();
  const value = work();
  return { value, ms: performance.now() - start };
}

const medianMs = (work: () => unknown): number =>
  Array.from({ length: RUNS }, () => timed(work).ms).sort((a, b) => a - b)[RUNS >> 1]!;

/** The first of the people is away from a day to before another. */
function withoutFirstOn(problem: WorkProblem, from: number, to: number): WorkProblem {
  const without = (list: Int32Array): Int32Array =>
    list.map((minutes, day) => (from <= day && day < to ? 0 : minutes));
  const [first, ...others] = problem.workers;
  const away = { minutes: without(first!.minutes), lightMinutes: without(first!.lightMinutes) };
  return { ...problem, workers: [away, ...others] };
}

const longJobs = (problem: WorkProblem): WorkProblem => ({
  ...problem,
  jobs: problem.jobs.map((job) => ({
    ...job,
    minutes: 60 * LARGE_HOURS,
    smallestPieceMinutes: 30,
  })),
});
