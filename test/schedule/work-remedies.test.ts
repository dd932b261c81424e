import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { seededRandom } from '../../shared/schedule/random.js';
import { remediesFor } from '../../shared/schedule/work-remedies.js';
import { fitWork } from '../../shared/schedule/work-search.js';
import { placedMinutes, type WorkJob } from '../../shared/schedule/work.js';
import type { WorkPlacing, WorkProblem } from '../../shared/schedule/work.js';
import { smallHousehold } from '../support/random-households.js';
import { newJob, newWorker } from '../support/work-factories.js';

const planOf = (problem: WorkProblem, earlier?: WorkPlacing) =>
  fitWork(problem, { plans: 100 }, seededRandom(1), earlier && { plan: earlier, costPerMove: 3 })
    .plan;

describe('remediesFor', () => {
  const problem: WorkProblem = {
    days: 5,
    workers: [newWorker(5, 60)],
    jobs: [
      newJob({ id: 'cheap', lostCost: 120, dueDay: 0, untilDay: 0, minutes: 40 }),
      newJob({ id: 'dear', lostCost: 900, dueDay: 0, untilDay: 0, minutes: 20 }),
      newJob({ id: 'left', lostCost: 110, dueDay: 0, untilDay: 0, minutes: 30 }),
    ],
  };

  it('gives the minutes that lack, and the first day after its last on which it would fit', () => {
    expect(remediesFor(problem, planOf(problem), 2)).toEqual({
      hours: { day: 0, minutes: 30 },
      laterDay: 1,
      instead: [],
    });
  });

  it('names what could be dropped for it, and nothing dearer', () => {
    const plan = planOf(problem);
    const jobs = problem.jobs.map((job, i) => (i === 2 ? { ...job, lostCost: 500 } : job));
    expect(remediesFor({ ...problem, jobs }, plan, 2).instead).toEqual([0]);
  });

  describe('tried', () => {
    /** A household that gives a job what it lacks gives it to that job, whatever else is short. */
    const forIt = (jobs: readonly WorkJob[], index: number, more: Partial<WorkJob> = {}) =>
      jobs.map((job, i) =>
        i === index ? { ...job, lostCost: 10_000, lateCostPerDay: 0, ...more } : job,
      );

    const withMore = (problem: WorkProblem, { able }: WorkJob, day: number, minutes: number) =>
      problem.workers.map((worker, w) => {
        const add = (m: number, d: number): number =>
          d === day && able.includes(w) ? m + minutes : m;
        return { minutes: worker.minutes.map(add), lightMinutes: worker.lightMinutes.map(add) };
      });

    const without = (jobs: readonly WorkJob[], other: number) =>
      jobs.map((job, i) => ({
        ...job,
        waitsFor: job.waitsFor.filter((wait) => wait.job !== other),
        ...(i === other ? { able: [] } : {}),
      }));

    const any = fc.nat().map((seed) => smallHousehold(seededRandom(seed)));

    it('makes all of the job fit, each way by itself', () => {
      const tried = { hours: 0, laterDay: 0, instead: 0 };
      fc.assert(
        fc.property(any, (problem) => {
          const plan = planOf(problem);
          problem.jobs.forEach((job, i) => {
            if (job.minutes <= placedMinutes(plan[i]!)) return;
            const { hours, laterDay, instead } = remediesFor(problem, plan, i);
            const fits = (changed: WorkProblem): void => {
              expect(placedMinutes(planOf(changed, plan)[i]!)).toBe(job.minutes);
            };
            if (hours) {
              tried.hours++;
              const workers = withMore(problem, job, hours.day, hours.minutes);
              fits({ ...problem, workers, jobs: forIt(problem.jobs, i) });
            }
            if (laterDay !== undefined) {
              tried.laterDay++;
              fits({ ...problem, jobs: forIt(problem.jobs, i, { untilDay: laterDay }) });
            }
            for (const other of instead) {
              tried.instead++;
              fits({ ...problem, jobs: forIt(without(problem.jobs, other), i) });
            }
          });
        }),
        { numRuns: 12, seed: 20270401 },
      );
      expect(Object.values(tried).every((times) => 0 < times)).toBe(true);
    });
  });
});
