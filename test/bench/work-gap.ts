/**
 * How far plans of work are from the best there is, or the best that is known. What the solver
 * proved is kept beside this file, by what it was asked; `npm run bench -- --prove` asks it for
 * what is missing, which takes hours.
 */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import * as solver from 'highs';
import type { Highs } from 'highs';
import { goodPlans, limitsFor } from '../../shared/plan/work/fitted-work.js';
import { seededRandom } from '../../shared/schedule/random.js';
import { fitWork } from '../../shared/schedule/work-search.js';
import type { WorkProblem } from '../../shared/schedule/work.js';
import { randomHousehold, smallHousehold } from '../support/random-households.js';
import { workProgram } from '../support/work-program.js';

const HOUSEHOLDS = 1000;
const FIRST_SEED = 1000;
/** Times as many plans as a good one tries. */
const LONG_TIMES = 100;
const SOLVER_SECONDS = 110;
/** A gap is held against at least the loss of one job that could be done. */
const LEAST_COST = 40;
const KNOWN = new URL('./work-optima.txt', import.meta.url);
const LARGE = [
  { days: 60, people: 2, jobs: 60, load: 0.9 },
  { days: 90, people: 3, jobs: 100, load: 0.9 },
  { days: 365, people: 3, jobs: 150, load: 0.8 },
  { days: 200, people: 4, jobs: 200, load: 0.9 },
];

type Print = (name: string, value: number, unit: string, runs: number) => void;

const fit = (problem: WorkProblem): number =>
  fitWork(problem, limitsFor(problem.jobs.length), seededRandom(1)).cost;

const fitForLong = (problem: WorkProblem): number =>
  fitWork(problem, { plans: LONG_TIMES * goodPlans(problem.jobs.length) }, seededRandom(1)).cost;

/** The least cost of each program by its hash; NaN where the solver was not done in its time. */
function knownOptima(): Map<string, number> {
  if (!existsSync(KNOWN)) return new Map();
  const lines = readFileSync(KNOWN, 'utf8').trim().split('\n');
  return new Map(
    lines.map((line): [string, number] => {
      const [hash, least] = line.split(' ') as [string, string];
      return [hash, Number(least)];
    }),
  );
}

const hashOf = (text: string): string =>
  createHash('sha256').update(text).digest('hex').slice(0, 12);

async function prove(known: Map<string, number>, programs: readonly string[]): Promise<void> {
  const highs = await (solver.default as unknown as () => Promise<Highs>)();
  for (const program of programs) {
    const hash = hashOf(program);
    if (known.has(hash)) continue;
    const solved = highs.solve(program, { mip_rel_gap: 0, time_limit: SOLVER_SECONDS });
    known.set(hash, solved.Status === 'Optimal' ? solved.ObjectiveValue : NaN);
    writeFileSync(KNOWN, [...known].map((row) => row.join(' ')).join('\n') + '\n');
  }
}

function againstProven(
  problems: readonly WorkProblem[],
  least: readonly number[],
  print: Print,
): void {
  const gaps = problems.flatMap((problem, k) =>
    Number.isFinite(least[k]) ? [gapOf(fit(problem), least[k]!)] : [],
  );
  const { length } = gaps;
  print('work, households of 10 to 25 jobs proven by a solver', length, '', problems.length);
  print('work, average gap to the proven best', averageOf(gaps), '%', length);
  print('work, worst gap to the proven best', Math.max(...gaps), '%', length);
  print('work, gaps over 1 %', gaps.filter((gap) => 1 < gap).length, '', length);
}

function againstLongRun(print: Print): void {
  const gaps = LARGE.map((size, k) => {
    const problem = randomHousehold(seededRandom(500 + k), size);
    return gapOf(fit(problem), fitForLong(problem));
  });
  const of = 'work, 60 to 200 jobs against a search 100 times as long';
  print(`${of}, average gap`, averageOf(gaps), '%', gaps.length);
  print(`${of}, worst gap`, Math.max(...gaps), '%', gaps.length);
}

const gapOf = (cost: number, least: number): number =>
  (100 * (cost - least)) / Math.max(LEAST_COST, least);

const averageOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/**
 * Households of 10 to 25 jobs against an exact solver (HiGHS), larger ones against a long search.
 *
 * @param print prints one figure: name, value, unit, number of cases
 */
export async function benchWorkGap(print: Print): Promise<void> {
  const problems = Array.from({ length: HOUSEHOLDS }, (_, k) =>
    smallHousehold(seededRandom(FIRST_SEED + k)),
  );
  const programs = problems.map(workProgram);
  const known = knownOptima();
  if (process.argv.includes('--prove')) await prove(known, programs);
  const least = programs.map((program) => known.get(hashOf(program)) ?? NaN);
  againstProven(problems, least, print);
  againstLongRun(print);
}
