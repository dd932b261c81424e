import { beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import type { Highs } from 'highs';
import { seededRandom } from '../../shared/schedule/random.js';
import { fitWork } from '../../shared/schedule/work-search.js';
import type { WorkProblem } from '../../shared/schedule/work.js';
import { smallHousehold } from '../support/random-households.js';
import { anyProblem } from '../support/work-factories.js';
import { workProgram } from '../support/work-program.js';
import { solver } from '../support/outside-solver.js';

/** Households of the bench that the solver proves in a moment. */
const HOUSEHOLDS = [1004, 1010, 1012, 1013, 1019];

describe('fitWork against a proven optimum', () => {
  let highs: Highs;
  beforeAll(async () => {
    highs = await solver();
  });

  /** The least that a problem can cost, by a general-purpose solver. */
  function leastCost(problem: WorkProblem): number {
    const solved = highs.solve(workProgram(problem), { mip_rel_gap: 0 });
    expect(solved.Status).toBe('Optimal');
    return solved.ObjectiveValue;
  }

  it('costs the same as the solver’s proven best where work is done in one go', () => {
    const any = anyProblem({ days: 8, workers: 2, jobs: 8, spread: false });
    fc.assert(
      fc.property(any, (problem) => {
        const least = leastCost(problem);
        const found = fitWork(problem, { plans: 4000 }, seededRandom(1));
        expect(found.cost).toBeCloseTo(least, 6);
        expect(found.bound).toBeLessThanOrEqual(least + 1e-6);
      }),
      { numRuns: 30, seed: 20270401 },
    );
  });

  it('costs the same where work may be spread and done in part, but for parts of an hour', () => {
    const any = anyProblem({ days: 8, workers: 2, jobs: 8, spread: true });
    const gaps: number[] = [];
    fc.assert(
      fc.property(any, (problem) => {
        const least = leastCost(problem);
        const found = fitWork(problem, { plans: 4000 }, seededRandom(1));
        // Minutes of the solver need not be whole, so that it may be a little better than any plan.
        expect(found.cost).toBeGreaterThanOrEqual(least - 1e-6);
        expect(found.bound).toBeLessThanOrEqual(least + 1e-6);
        gaps.push(found.cost - least);
      }),
      { numRuns: 30, seed: 20270401 },
    );
    expect(gaps.filter((gap) => 1 < gap)).toEqual([]);
  });

  it('stays within a hundredth of it for households of 10 to 25 jobs', () => {
    const costs = HOUSEHOLDS.map((seed) => {
      const problem = smallHousehold(seededRandom(seed));
      const found = fitWork(problem, { plans: 8000 }, seededRandom(1));
      return { least: leastCost(problem), cost: found.cost };
    });
    const sum = (of: (each: (typeof costs)[number]) => number) =>
      costs.reduce((all, each) => all + of(each), 0);
    expect(sum(({ cost }) => cost)).toBeLessThanOrEqual(1.01 * sum(({ least }) => least));
  });
});
