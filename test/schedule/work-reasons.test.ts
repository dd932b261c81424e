import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { workNetwork } from '../../shared/schedule/work-network.js';
import { daysLeft, placementReason, unfitReason } from '../../shared/schedule/work-reasons.js';
import { remediesFor } from '../../shared/schedule/work-remedies.js';
import { seededRandom } from '../../shared/schedule/random.js';
import { fitWork } from '../../shared/schedule/work-search.js';
import { workWindows } from '../../shared/schedule/work-windows.js';
import type { WorkJob, WorkPlacing, WorkProblem } from '../../shared/schedule/work.js';
import { anyProblem, newJob, newWorker } from '../support/work-factories.js';

const planOf = (problem: WorkProblem) => fitWork(problem, { plans: 50 }, seededRandom(1)).plan;
const oneWorker = (jobs: WorkJob[], minutes = 120): WorkProblem => ({
  days: 10,
  workers: [newWorker(10, minutes)],
  jobs,
});
const because = (job: Partial<WorkJob>, minutes = 120) => {
  const problem = oneWorker([newJob(job)], minutes);
  return unfitReason(problem, planOf(problem), 0).because;
};

describe('workWindows', () => {
  it('passes the latest day back through the chain, and says who set it', () => {
    const jobs = [
      newJob({ dueDay: 9 }),
      newJob({ dueDay: 9, waitsFor: [{ job: 0, days: 2 }] }),
      newJob({ dueDay: 6, waitsFor: [{ job: 1, days: 1 }] }),
    ];
    const windows = workWindows(jobs, workNetwork(jobs));
    expect(windows.map((w) => w.latestDay)).toEqual([3, 5, 6]); // 6 − 1 = 5, 5 − 2 = 3
    expect(windows.map((w) => w.earliestDay)).toEqual([0, 2, 3]);
    expect(windows.map((w) => w.spareDays)).toEqual([3, 3, 3]);
    expect(windows.map((w) => w.setBy)).toEqual([1, 2, undefined]);
  });

  it('shows a chain that does not fit between its dates as less than no slack', () => {
    const jobs = [
      newJob({ fromDay: 5, dueDay: 9 }),
      newJob({ dueDay: 6, waitsFor: [{ job: 0, days: 3 }] }),
    ];
    expect(workWindows(jobs, workNetwork(jobs))[0]!.spareDays).toBe(-2); // latest 3, earliest 5
  });
});

describe('placementReason', () => {
  const shape = { days: 12, workers: 2, jobs: 8, spread: true };
  /** Days before its place of which a reason says what is not so. */
  function untrue(problem: WorkProblem, plan: WorkPlacing, earlier?: WorkPlacing): string[] {
    return plan.flatMap((pieces, i) => {
      if (pieces.length === 0) return [];
      const job = problem.jobs[i]!;
      const left = daysLeft(problem, plan);
      const least = Math.min(job.minutes, job.smallestPieceMinutes ?? job.minutes);
      const days = (of: readonly { day: number }[] = []) => of.map(({ day }) => day).join();
      return placementReason(problem, plan, i).refused.flatMap(({ day, because }) => {
        const suits = !job.suits || job.suits[day] === 1;
        const hasHours = least <= left.together(job, day);
        const inTheDark = least <= left.together({ ...job, needsLight: false }, day);
        const holds = {
          'does-not-suit': !suits,
          'no-light': suits && !hasHours && job.needsLight === true && inTheDark,
          'no-hours': suits && !hasHours && !inTheDark,
          'kept-its-place': suits && hasHours && days(earlier?.[i]) === days(pieces),
        }[because];
        return holds ? [] : [`${job.id} on ${day}: ${because}`];
      });
    });
  }

  it('holds up for every day of every job, whatever the problem', () => {
    fc.assert(
      fc.property(anyProblem(shape), (problem) => {
        expect(untrue(problem, planOf(problem))).toEqual([]);
      }),
    );
  });

  it('holds up when a plan is made again with one day fewer for somebody', () => {
    fc.assert(
      fc.property(anyProblem(shape), fc.nat(11), (problem, day) => {
        const earlier = planOf(problem);
        const without = (list: Int32Array) => list.map((m, d) => (d === day ? 0 : m));
        const [first, ...others] = problem.workers;
        const workers = [
          { minutes: without(first!.minutes), lightMinutes: without(first!.lightMinutes) },
          ...others,
        ];
        const changed = { ...problem, workers };
        const again = fitWork(changed, { plans: 50 }, seededRandom(1), {
          plan: earlier,
          costPerMove: 3,
        }).plan;
        expect(untrue(changed, again, earlier)).toEqual([]);
      }),
    );
  });

  it('names the days before that do not suit or have no hours, and what holds it back', () => {
    const suits = Uint8Array.from([1, 1, 1, 0, 0, 1, 0, 1, 1, 1]);
    const problem = oneWorker([
      newJob({ id: 'first', fromDay: 1, dueDay: 1, untilDay: 1, minutes: 120 }),
      newJob({ id: 'full', fromDay: 2, dueDay: 2, untilDay: 2, minutes: 120 }),
      newJob({ id: 'sow', suits, waitsFor: [{ job: 0, days: 1 }], dueDay: 8 }),
    ]);
    expect(placementReason(problem, planOf(problem), 2)).toEqual({
      allowedFrom: 2,
      heldBy: 0,
      refused: [
        { day: 2, because: 'no-hours' },
        { day: 3, because: 'does-not-suit' },
        { day: 4, because: 'does-not-suit' },
      ],
      spareDays: 3,
      laterDays: [7, 8],
    });
  });
});

describe('unfitReason', () => {
  it('tells the causes apart', () => {
    expect(because({ able: [] })).toBe('too-few-able');
    expect(because({ fromDay: 6, untilDay: 4 })).toBe('closed-window');
    expect(because({ untilDay: -1 })).toBe('past');
    expect(because({ suits: new Uint8Array(10) })).toBe('never-suits');
    expect(because({}, 0)).toBe('nobody-there');
    expect(because({ minutes: 121 })).toBe('longer-than-any-day');
    expect(because({ minutes: 1201, smallestPieceMinutes: 60 })).toBe('too-few-hours');
  });

  it('says when what it waits for is what does not fit', () => {
    const problem = oneWorker([newJob({ able: [] }), newJob({ waitsFor: [{ job: 0, days: 0 }] })]);
    expect(unfitReason(problem, planOf(problem), 1).because).toBe('waits-for-unfit');
  });

  it('names what has the hours, the most of them first, where no room was found', () => {
    const days = { dueDay: 1, untilDay: 1 };
    const problem = oneWorker([
      newJob({ minutes: 60, lostCost: 500, ...days }),
      newJob({ minutes: 80, lostCost: 500, ...days }),
      newJob({ minutes: 90, lostCost: 50, ...days }),
    ]);
    expect(unfitReason(problem, planOf(problem), 2)).toEqual({
      because: 'no-room-found',
      takenBy: [1, 0],
    });
  });

  it('names what begins before the rest of a job could be done', () => {
    const minutes = Int32Array.of(60, 60, 60);
    const problem: WorkProblem = {
      days: 3,
      workers: [{ minutes, lightMinutes: minutes }],
      jobs: [
        newJob({ minutes: 90, smallestPieceMinutes: 30, lostCost: 30, dueDay: 2, untilDay: 2 }),
        newJob({
          fromDay: 1,
          dueDay: 1,
          untilDay: 1,
          lostCost: 900,
          waitsFor: [{ job: 0, days: 1 }],
        }),
      ],
    };
    const plan: WorkPlacing = [
      [{ day: 0, minutes: 60, workers: [0] }],
      [{ day: 1, minutes: 60, workers: [0] }],
    ];
    expect(unfitReason(problem, plan, 0)).toEqual({ because: 'holds-up', takenBy: [], holdsUp: 1 });
  });
});

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
});
