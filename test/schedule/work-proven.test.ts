import { beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import * as solver from 'highs';
import type { Highs } from 'highs';
import { seededRandom } from '../../shared/schedule/random.js';
import { fitWork } from '../../shared/schedule/work-search.js';
import { costOf, type WorkProblem } from '../../shared/schedule/work.js';
import { anyProblem } from '../support/work-factories.js';

/**
 * The same problem as a mixed-integer program, solved by a general-purpose solver (HiGHS):
 * one variable for every job, day and set of people; its optimum is what the search must reach.
 */
function program({ jobs, workers, days }: WorkProblem): string {
  const costs: string[] = [];
  const rows: string[] = [];
  const names: string[] = [];
  const hours = new Map<string, string[]>();
  const starts = jobs.map((job, i) => {
    const options: { name: string; day: number }[] = [];
    const sets = job.peopleNeeded === 1 ? job.able.map((w) => [w]) : pairs(job.able);
    for (let day = job.fromDay; day <= Math.min(job.untilDay, days - 1); day++) {
      if (job.suits && job.suits[day] !== 1) continue;
      sets.forEach((set, s) => {
        const name = `x${i}_${day}_${s}`;
        options.push({ name, day });
        names.push(name);
        costs.push(`${costOf(job, [{ day, minutes: job.minutes, workers: [] }])} ${name}`);
        for (const w of set) {
          for (const kind of job.needsLight ? ['m', 'l'] : ['m']) {
            const key = `${kind}${w}_${day}`;
            hours.set(key, [...(hours.get(key) ?? []), `${job.minutes} ${name}`]);
          }
        }
      });
    }
    names.push(`lost${i}`);
    costs.push(`${job.lostCost} lost${i}`);
    rows.push(`${[...options.map((o) => o.name), `lost${i}`].join(' + ')} = 1`);
    return options;
  });
  jobs.forEach((job, i) => {
    for (const wait of job.waitsFor) {
      for (const { name, day } of starts[i]!) {
        const early = starts[wait.job]!.filter((o) => o.day + wait.days <= day);
        rows.push(`${name} ${early.map((o) => `- ${o.name}`).join(' ')} <= 0`);
      }
    }
  });
  for (const [key, terms] of hours) {
    const [kind, w, day] = [key[0], ...key.slice(1).split('_').map(Number)] as [
      string,
      number,
      number,
    ];
    const limit = kind === 'm' ? workers[w]!.minutes[day] : workers[w]!.lightMinutes[day];
    rows.push(`${terms.join(' + ')} <= ${limit}`);
  }
  return [
    'Minimize',
    ` obj: ${costs.join(' + ')}`,
    'Subject To',
    ...rows.map((row, k) => ` c${k}: ${row}`),
    'Binary',
    ...names.map((name) => ` ${name}`),
    'End',
  ].join('\n');
}

const pairs = (able: readonly number[]): number[][] =>
  able.flatMap((a, k) => able.slice(k + 1).map((b) => [a, b]));

describe('fitWork against a proven optimum', () => {
  let highs: Highs;
  beforeAll(async () => {
    // The types call it an ES module; it is a CommonJS one, whose only export is the loader.
    highs = await (solver.default as unknown as () => Promise<Highs>)();
  });

  it('costs the same as the solver’s proven best on household-sized cases', () => {
    const any = anyProblem({ days: 8, workers: 2, jobs: 8, spread: false });
    let proven = 0;
    fc.assert(
      fc.property(any, (problem) => {
        const solved = highs.solve(program(problem));
        expect(solved.Status).toBe('Optimal');
        proven++;
        const found = fitWork(problem, { plans: 4000 }, seededRandom(1));
        expect(found.cost).toBeCloseTo(solved.ObjectiveValue, 6);
        expect(found.bound).toBeLessThanOrEqual(solved.ObjectiveValue + 1e-6);
      }),
      { numRuns: 150, seed: 20270401 },
    );
    expect(proven).toBeGreaterThanOrEqual(150);
  });
});
