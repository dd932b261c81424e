import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { workNetwork } from '../../shared/schedule/work-network.js';
import {
  daysLeft,
  placementReason,
  unfitReason,
  type UnfitBecause,
} from '../../shared/schedule/work-reasons.js';
import { followersOf, freeFrom, spanOf } from '../../shared/schedule/work-span.js';
import { seededRandom } from '../../shared/schedule/random.js';
import { fitWork } from '../../shared/schedule/work-search.js';
import { workWindows } from '../../shared/schedule/work-windows.js';
import { costOf, placedMinutes, type WorkJob } from '../../shared/schedule/work.js';
import type { WorkPlacing, WorkProblem } from '../../shared/schedule/work.js';
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
  /** The day on which a job of a plan would begin if it was put in once more from a day on. */
  function beginsAnew(problem: WorkProblem, plan: WorkPlacing, i: number, day: number) {
    const others = daysLeft(
      problem,
      plan.map((pieces, k) => (k === i ? [] : pieces)),
    );
    others.leavesMargin = true;
    const { until } = spanOf(problem.jobs[i]!, followersOf(problem)[i]!, plan);
    return others.put(problem.jobs[i]!, day, until)[0]?.day;
  }

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
          'kept-free':
            suits &&
            hasHours &&
            problem.margin !== undefined &&
            left.togetherWithMargin(job, day) < least &&
            beginsAnew(problem, plan, i, day) !== day,
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

  it('holds up where work that can wait leaves hours of its days free', () => {
    fc.assert(
      fc.property(anyProblem(shape), fc.constantFrom(0.2, 0.5), (problem, share) => {
        const withMargin = { ...problem, margin: { share, leastMinutes: 30, spareDays: 1 } };
        const plan = planOf(withMargin);
        expect(untrue(withMargin, plan)).toEqual([]);
        const costOfPlan = (of: WorkPlacing) =>
          problem.jobs.reduce((sum, job, i) => sum + costOf(job, of[i]!), 0);
        expect(costOfPlan(plan)).toBeCloseTo(costOfPlan(planOf(problem)), 6);
      }),
    );
  });

  it('says that hours are left free only of work that an earlier plan did not keep so late', () => {
    const job = newJob({ minutes: 60, dueDay: 5, untilDay: 9 });
    const problem = {
      ...{ days: 10, workers: [newWorker(10, 300)], jobs: [newJob({ minutes: 220 }), job] },
      margin: { share: 0.2, leastMinutes: 30, spareDays: 3 },
    };
    const planOn = (day: number): WorkPlacing => [
      [{ day: 0, minutes: 220, workers: [0] }],
      [{ day, minutes: 60, workers: [0] }],
    ];
    const said = (day: number) => placementReason(problem, planOn(day), 1).refused[0];
    // Of day 0, 80 minutes are left and 60 are to stay free: it would be on day 1.
    expect(said(1)).toEqual({ day: 0, because: 'kept-free' });
    // Where it is due on day 2 nothing is left free for it: it stands where it stood.
    const soon = { ...problem, jobs: [problem.jobs[0]!, { ...job, dueDay: 2 }] };
    expect(placementReason(soon, planOn(2), 1).refused[0]!.because).toBe('kept-its-place');
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

  it('gives what a useful split leaves free to a job that came after it', () => {
    const days = { dueDay: 5, untilDay: 5 };
    const minutes = Int32Array.of(0, 0, 0, 120, 0, 120);
    const problem: WorkProblem = {
      days: 6,
      workers: [{ minutes, lightMinutes: minutes }],
      jobs: [
        // 90 and 30 minutes while the second stands on day 3; 60 and 60 once both are split usefully.
        newJob({ minutes: 120, smallestPieceMinutes: 60, fromDay: 3, ...days }),
        newJob({ minutes: 30, dueDay: 2, untilDay: 3 }),
        newJob({ minutes: 30, ...days }),
      ],
    };
    const plan = planOf(problem);
    expect(plan.map((pieces) => pieces.map(({ day, minutes: m }) => [day, m]))).toEqual([
      [
        [3, 60],
        [5, 60],
      ],
      [[3, 30]],
      [[3, 30]],
    ]);
    expect(untrue(problem, plan)).toEqual([]);
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

/** Reasons that hold whatever else there is to do. */
const HOPELESS = new Set<UnfitBecause>([
  'past',
  'closed-window',
  'too-few-able',
  'never-suits',
  'nobody-there',
  'too-few-at-once',
  'longer-than-any-day',
  'too-few-hours',
]);

describe('unfitReason', () => {
  const shape = anyProblem({ days: 12, workers: 2, jobs: 10, spread: true });
  const unfit = ({ jobs }: WorkProblem, plan: WorkPlacing): number[] =>
    jobs.flatMap((job, i) => (placedMinutes(plan[i]!) < job.minutes ? [i] : []));

  it('calls hopeless only what finds no place with everybody’s hours to itself', () => {
    let hopeless = 0;
    fc.assert(
      fc.property(shape, (problem) => {
        const plan = planOf(problem);
        for (const i of unfit(problem, plan)) {
          const { because } = unfitReason(problem, plan, i);
          if (!HOPELESS.has(because)) continue;
          hopeless++;
          const jobs = [{ ...problem.jobs[i]!, waitsFor: [], lateCostPerDay: 0 }];
          const alone = fitWork({ ...problem, jobs }, { plans: 200 }, seededRandom(2));
          expect(placedMinutes(alone.plan[0]!)).toBeLessThan(jobs[0]!.minutes);
        }
      }),
    );
    expect(hopeless).toBeGreaterThan(0);
  });

  it('says that no room was found, or what would begin later, only where that is so', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(shape, (problem) => {
        const plan = planOf(problem);
        for (const i of unfit(problem, plan)) {
          const { because, takenBy, holdsUp } = unfitReason(problem, plan, i);
          const job = problem.jobs[i]!;
          seen.add(because);
          const left = daysLeft(problem, plan);
          left.giveBack(job, plan[i]!);
          const room = placedMinutes(left.put(job, freeFrom(job, plan)));
          if (because === 'no-room-found') expect(room).toBe(placedMinutes(plan[i]!));
          if (because === 'none-soon-enough') {
            expect(room).toBeGreaterThan(0);
            expect(plan[i]).toEqual([]);
          }
          if (because === 'holds-up') {
            expect(room).toBeGreaterThan(placedMinutes(plan[i]!));
            expect(problem.jobs[holdsUp!]!.waitsFor.map((wait) => wait.job)).toContain(i);
          }
          for (const other of takenBy)
            expect(
              plan[other]!.some(
                ({ day, workers }) =>
                  job.fromDay <= day &&
                  day <= job.untilDay &&
                  (!job.suits || job.suits[day] === 1) &&
                  workers.some((w) => job.able.includes(w)),
              ),
            ).toBe(true);
        }
      }),
      { numRuns: 300, seed: 20270401 },
    );
    expect(seen).toContain('no-room-found');
    expect(seen).toContain('holds-up');
  });

  it('tells the causes apart', () => {
    expect(because({ able: [] })).toBe('too-few-able');
    expect(because({ fromDay: 6, untilDay: 4 })).toBe('closed-window');
    expect(because({ untilDay: -1 })).toBe('past');
    expect(because({ suits: new Uint8Array(10) })).toBe('never-suits');
    expect(because({}, 0)).toBe('nobody-there');
    expect(because({ minutes: 121 })).toBe('longer-than-any-day');
    expect(because({ minutes: 1201, smallestPieceMinutes: 60 })).toBe('too-few-hours');
  });

  it('calls for two at once only where one has the time and no second has', () => {
    const both = newJob({ able: [0, 1], peopleNeeded: 2, minutes: 35 });
    const reason = (firstMinutes: number, secondMinutes: number) => {
      const workers = [newWorker(10, firstMinutes), newWorker(10, secondMinutes)];
      const problem = { days: 10, workers, jobs: [both] };
      return unfitReason(problem, planOf(problem), 0).because;
    };
    expect(reason(0, 120)).toBe('too-few-at-once');
    expect(reason(120, 30)).toBe('too-few-at-once');
    expect(reason(0, 30)).toBe('nobody-there');
    expect(reason(30, 30)).toBe('longer-than-any-day');
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
