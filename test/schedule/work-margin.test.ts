import { describe, expect, it } from '@jest/globals';
import { seededRandom } from '../../shared/schedule/random.js';
import { placementReason } from '../../shared/schedule/work-reasons.js';
import { fitWork } from '../../shared/schedule/work-search.js';
import type { WorkJob, WorkProblem } from '../../shared/schedule/work.js';
import { newJob, newWorker } from '../support/work-factories.js';

const MARGIN = { share: 0.2, leastMinutes: 30, spareDays: 3 };
const problemOf = (jobs: WorkJob[], minutes = 300): WorkProblem => ({
  ...{ days: 10, workers: [newWorker(10, minutes)], jobs, margin: MARGIN },
});
const daysOf = (problem: WorkProblem) => {
  const { plan } = fitWork(problem, { plans: 50 }, seededRandom(1));
  return { plan, days: plan.map((pieces) => pieces.map(({ day, minutes }) => [day, minutes])) };
};

describe('hours left free', () => {
  it('leaves a fifth of a long day free where work can wait, and says so', () => {
    const problem = problemOf([newJob({ minutes: 240 }), newJob({ minutes: 60 })]);
    const { plan, days } = daysOf(problem);
    expect(days.flat().sort()).toEqual([
      [0, 240],
      [1, 60],
    ]); // 0.8 × 300 = 240
    const later = plan.findIndex((pieces) => pieces[0]!.day === 1);
    expect(placementReason(problem, plan, later).refused).toEqual([
      { day: 0, because: 'kept-free' },
    ]);
  });

  it('fills the day for work that is due soon, or that would be late else', () => {
    const soon = { dueDay: 2, untilDay: 9 };
    const jobs = [newJob({ minutes: 240, ...soon }), newJob({ minutes: 60, ...soon })];
    expect(daysOf(problemOf(jobs)).days).toEqual([[[0, 240]], [[0, 60]]]);
  });

  it('fills the day for work that hangs on the weather, and short evenings', () => {
    const suits = Uint8Array.of(1, 0, 1, 1, 1, 1, 1, 1, 1, 1);
    const fit = { suits, takesFirstDay: true } as const;
    const jobs = [newJob({ minutes: 240, ...fit }), newJob({ minutes: 60, ...fit })];
    expect(daysOf(problemOf(jobs)).days).toEqual([[[0, 240]], [[0, 60]]]);
    // A fifth of two hours is less than a useful piece.
    expect(daysOf(problemOf([newJob({ minutes: 120 })], 120)).days).toEqual([[[0, 120]]]);
  });

  it('moves nothing of a plan that was made before for that', () => {
    const jobs = [newJob({ minutes: 240 }), newJob({ minutes: 60 })];
    const full = { ...problemOf(jobs), margin: { ...MARGIN, share: 0 } };
    const { plan } = daysOf(full);
    const earlier = { plan, costPerMove: 3 };
    const again = fitWork(problemOf(jobs), { plans: 50 }, seededRandom(1), earlier);
    expect(again.plan).toEqual(plan);
  });
});
