import { describe, expect, it } from '@jest/globals';
import { learnedHours } from '../../../shared/plan/work/learned-hours.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { tables } from '../../support/factories.js';
import { newBatchWork, newOwnJob, newWork } from '../../support/season-factories.js';

const judged = tables.judgements.work;

const log = (hours: number, reckonedHours: number, kind = 'batch/meat.order') => ({
  key: `batch/old/${kind}`,
  doneOn: '2026-04-01',
  hours,
  reckonedHours,
  kind,
});

describe('learnedHours', () => {
  it('moves half of the way, in ratios, after one log, and closer with more', () => {
    const factor = (times: number): number =>
      learnedHours(
        Array.from({ length: times }, () => log(4, 1)),
        judged,
      ).get('batch/meat.order')!.factor;
    expect(factor(1)).toBeCloseTo(2, 9); // √4
    expect(factor(3)).toBeCloseTo(4 ** (3 / 4), 9);
  });

  it('lets what took longer and what took less cancel out', () => {
    const learned = learnedHours([log(2, 1), log(1, 2)], judged).get('batch/meat.order')!;
    expect(learned).toEqual({ factor: 1, times: 2 });
  });

  it('keeps a slip of the pen within five times, and kinds apart', () => {
    const learned = learnedHours([log(500, 1), log(1, 1, 'batch/other')], judged);
    expect(learned.get('batch/meat.order')!.factor).toBeCloseTo(Math.sqrt(5), 9);
    expect(learned.get('batch/other')!.factor).toBe(1);
  });
});

describe('workPlanOf', () => {
  it('reckons with what the log says, and keeps what the table said beside it', () => {
    const work = [newBatchWork('2027-05-05', '2027-04-05')];
    const kind = 'batch/meat.price-and-order-feed';
    const jobOf = (marks: Parameters<typeof learnedHours>[0]) =>
      workPlanOf(newWork({ work, progress: marks }), 50).jobs.find((job) => job.kind === kind)!;
    const plain = jobOf([]);
    const learned = jobOf([log(4, 1, kind)]);
    expect(plain.learned).toBeUndefined();
    expect(learned.hours).toBeCloseTo(2 * plain.hours, 9);
    expect(learned.learned).toMatchObject({ times: 1, reckonedHours: plain.hours });
  });

  it('reckons a job of one’s own that comes again with how long its times before took', () => {
    const timesOf = (hours: number, marks: Parameters<typeof learnedHours>[0]) => {
      const straw = newOwnJob({
        ...{ id: 'straw', dueOn: '2027-04-12', hours },
        repeats: { every: 'weekdays', weekdays: [1] },
      });
      const { jobs } = workPlanOf(newWork({ ownJobs: [straw], progress: marks }), 50);
      return jobs.filter(({ key }) => key.startsWith('own/straw/'));
    };
    const [plain] = timesOf(0.5, []);
    expect([plain!.hours, plain!.learned]).toEqual([0.5, undefined]);
    const logs = [{ key: plain!.key, doneOn: '2027-04-05', hours: 2 }];
    const [, , ...later] = timesOf(0.5, logs);
    expect(later.length).toBeGreaterThan(2);
    // One log and what was typed, each as much: the mean of ratios of 4 and 1 is 2.
    for (const job of later)
      expect(job).toMatchObject({ hours: 1, learned: { times: 1, reckonedHours: 0.5 } });
    // Typed anew, it is what was logged.
    for (const job of timesOf(2, logs).slice(2)) expect(job.hours).toBe(2);
  });
});
