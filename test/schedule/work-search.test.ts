import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { RingError } from '../../shared/schedule/activity-network.js';
import { seededRandom } from '../../shared/schedule/random.js';
import { signatureOf } from '../../shared/schedule/work-signature.js';
import { fitWork } from '../../shared/schedule/work-search.js';
import {
  costOf,
  finishDay,
  placedMinutes,
  type WorkPlacing,
  type WorkProblem,
} from '../../shared/schedule/work.js';
import { smallHousehold } from '../support/random-households.js';
import { anyProblem, newJob, newWorker } from '../support/work-factories.js';

const fit = (problem: WorkProblem, plans = 60, seed = 1) =>
  fitWork(problem, { plans }, seededRandom(seed));

/** Every rule a plan breaks, in words. */
function brokenRules({ jobs, workers, days }: WorkProblem, plan: WorkPlacing): string[] {
  const used = workers.map(() => new Int32Array(days));
  const light = workers.map(() => new Int32Array(days));
  const broken: string[] = [];
  jobs.forEach((job, i) => {
    const pieces = plan[i]!;
    if (pieces.length === 0) return;
    const sum = pieces.reduce((total, piece) => total + piece.minutes, 0);
    const isPart = job.smallestPieceMinutes !== undefined && sum < job.minutes;
    if (sum !== job.minutes && !isPart) broken.push(`${job.id}: ${sum} of ${job.minutes} minutes`);
    if (job.smallestPieceMinutes === undefined && 1 < pieces.length)
      broken.push(`${job.id}: in pieces`);
    pieces.forEach(({ day, minutes, workers: who }, k) => {
      if (day < job.fromDay || job.untilDay < day) broken.push(`${job.id}: outside its window`);
      if (job.suits && job.suits[day] !== 1) broken.push(`${job.id}: day ${day} does not suit`);
      if (who.length !== job.peopleNeeded || new Set(who).size !== who.length)
        broken.push(`${job.id}: ${who.length} people`);
      if (who.some((w) => !job.able.includes(w))) broken.push(`${job.id}: someone not able`);
      // Only the rest of a job that is done whole may be a piece too small.
      const isRest = k === pieces.length - 1 && sum === job.minutes;
      if (!isRest && minutes < Math.min(job.minutes, job.smallestPieceMinutes ?? 0))
        broken.push(`${job.id}: a piece of ${minutes}`);
      for (const w of who) {
        used[w]![day]! += minutes;
        if (job.needsLight) light[w]![day]! += minutes;
      }
    });
    for (const { job: before, days: gap, atMostDays = Infinity } of job.waitsFor) {
      const done = finishDay(plan[before]!);
      if (done < 0 || pieces[0]!.day < done + gap) broken.push(`${job.id}: does not wait`);
      if (done + atMostDays < pieces[0]!.day) broken.push(`${job.id}: waits too long`);
    }
  });
  workers.forEach((worker, w) => {
    for (let day = 0; day < days; day++) {
      if (worker.minutes[day]! < used[w]![day]!) broken.push(`worker ${w} over hours on ${day}`);
      if (worker.lightMinutes[day]! < light[w]![day]!) broken.push(`worker ${w} in the dark`);
    }
    for (const [other, most] of worker.together ?? [])
      for (let day = 0; day < days; day++) {
        const both = plan
          .flat()
          .filter(
            (piece) => piece.day === day && [w, other].every((x) => piece.workers.includes(x)),
          )
          .reduce((sum, { minutes }) => sum + minutes, 0);
        if (most[day]! < both) broken.push(`${w} and ${other} are not there at once on ${day}`);
      }
  });
  return broken;
}

const any = anyProblem({ days: 14, workers: 3, jobs: 14, spread: true });

describe('work for two', () => {
  const workers = (most: number[]) => [
    { ...newWorker(3, 60), together: new Map([[1, Int32Array.from(most)]]) },
    newWorker(3, 60),
    newWorker(3, 30),
  ];
  const pens = newJob({ peopleNeeded: 2, able: [0, 1], minutes: 40, dueDay: 2, untilDay: 2 });
  const placed = (most: number[], more: Partial<typeof pens> = {}) =>
    fit({ days: 3, workers: workers(most), jobs: [{ ...pens, ...more }] }).plan[0];

  it('is on a day on which both are there at the same hours', () => {
    expect(placed([0, 39, 40])).toEqual([{ day: 2, minutes: 40, workers: [0, 1] }]);
    expect(placed([0, 39, 39])).toEqual([]);
  });

  it('is for others who have less time, but at the same hours', () => {
    const able = { able: [0, 1, 2], minutes: 30 };
    expect(placed([0, 0, 0], able)).toEqual([{ day: 0, minutes: 30, workers: [0, 2] }]);
  });

  it('leaves hours of one alone as they are', () => {
    const jobs = [0, 1].map((w) => newJob({ peopleNeeded: 1, able: [w], dueDay: 0, untilDay: 0 }));
    const { cost } = fit({ days: 3, workers: workers([0, 0, 0]), jobs });
    expect(cost).toBe(0);
  });
});

describe('several at one job on one day', () => {
  const workers = [newWorker(10, 60), newWorker(10, 45)];
  const beds = newJob({ minutes: 210, smallestPieceMinutes: 30, able: [0, 1] });
  const placed = (more: Partial<typeof beds>) =>
    fit({ days: 10, workers, jobs: [{ ...beds, ...more }] }).plan[0]!.map(
      ({ day, minutes, workers: who }) => [day, minutes, ...who],
    );

  it('leaves a job to one a day that is in time so', () => {
    expect(placed({ dueDay: 3 })).toEqual([
      [0, 60, 0],
      [1, 60, 0],
      [2, 60, 0],
      [3, 30, 0],
    ]);
  });

  it('has all at it who have a useful piece of time where it would be late else', () => {
    // 60 + 45 minutes a day: 210 are done on the second day, and on the fourth by one alone.
    expect(placed({ dueDay: 1 })).toEqual([
      [0, 60, 0],
      [0, 45, 1],
      [1, 60, 0],
      [1, 45, 1],
    ]);
  });

  it('leaves out who has less time than a useful piece takes, but for the rest of it', () => {
    expect(placed({ dueDay: 1, smallestPieceMinutes: 60 })).toEqual([
      [0, 60, 0],
      [1, 60, 0],
      [2, 60, 0],
      [2, 30, 1],
    ]);
  });

  it('leaves it to those who help first, where they begin as soon and are in time', () => {
    const child = { ...newWorker(10, 45), helpsFirst: true } as const;
    const by = (dueDay: number) =>
      fit({ days: 10, workers: [workers[0]!, child], jobs: [{ ...beds, dueDay }] }).plan[0]!.map(
        ({ workers: [w] }) => w,
      );
    expect(by(4)).toEqual([1, 1, 1, 1, 1]); // 4 × 45 and 30 minutes
    expect(by(3)).toEqual([0, 0, 0, 0]); // too late by the child alone
    expect(by(1)).toEqual([0, 1, 0, 1]);
  });

  it('has two at what another waits for, where that would be late else', () => {
    const next = newJob({ fromDay: 0, dueDay: 2, waitsFor: [{ job: 0, days: 1 }] });
    const { cost } = fit({ days: 10, workers, jobs: [{ ...beds, dueDay: 9 }, next] }, 600);
    expect(cost).toBe(0);
  });
});

describe('fitWork', () => {
  it('never sends anyone over hours, out of turn, out of its window or into a day that does not suit', () => {
    fc.assert(
      fc.property(any, (problem) => {
        expect(brokenRules(problem, fit(problem).plan)).toEqual([]);
      }),
    );
  });

  it('keeps every rule where what others wait for is cut short to make room for them', () => {
    for (let seed = 9020; seed < 9040; seed++) {
      const problem = smallHousehold(seededRandom(seed));
      expect(brokenRules(problem, fit(problem, 2000).plan)).toEqual([]);
    }
  });

  it('costs what its jobs cost, and never less than its bound', () => {
    fc.assert(
      fc.property(any, (problem) => {
        const { plan, cost, bound } = fit(problem);
        const sum = plan.reduce((total, pieces, i) => total + costOf(problem.jobs[i]!, pieces), 0);
        expect(cost).toBeCloseTo(sum, 9);
        expect(bound).toBeLessThanOrEqual(cost + 1e-9);
      }),
    );
  });

  it('gives the same plan for the same seed', () => {
    fc.assert(
      fc.property(any, fc.nat(), (problem, seed) => {
        expect(fit(problem, 30, seed)).toEqual(fit(problem, 30, seed));
      }),
    );
  });

  it('is never worse with more plans to try', () => {
    fc.assert(
      fc.property(any, (problem) => {
        expect(fit(problem, 80).cost).toBeLessThanOrEqual(fit(problem, 5).cost);
      }),
    );
  });

  it('moves nothing when it plans again and nothing changed', () => {
    fc.assert(
      fc.property(any, (problem) => {
        const first = fit(problem);
        const earlier = { plan: first.plan, costPerMove: 3, madeFor: signatureOf(problem) };
        const again = fitWork(problem, { plans: 60 }, seededRandom(1), earlier);
        expect(again.plan).toEqual(first.plan);
        expect(again.cost).toBeCloseTo(first.cost, 9);
      }),
    );
  });

  it('moves nothing that had a place when moving costs more than is saved', () => {
    fc.assert(
      fc.property(any, (problem) => {
        const first = fit(problem);
        const earlier = { plan: first.plan, costPerMove: 1000 };
        const again = fitWork(problem, { plans: 60 }, seededRandom(1), earlier);
        expect(again.cost).toBeLessThanOrEqual(first.cost + 1e-9);
        again.plan.forEach((pieces, i) => {
          const was = first.plan[i]!;
          // What had no place before may find one: then there is more of it, and all else stays.
          if (problem.jobs[i]!.minutes <= placedMinutes(was)) expect(pieces).toEqual(was);
          for (const { day, minutes } of was)
            expect(pieces.find((each) => each.day === day)!.minutes).toBeGreaterThanOrEqual(
              minutes,
            );
        });
      }),
    );
  });

  it('does not stay with a plan that breaks the rules, whatever it says it was made for', () => {
    const problem: WorkProblem = { days: 2, workers: [newWorker(2, 60)], jobs: [newJob()] };
    const plan = [[{ day: 0, minutes: 60, workers: [0] }]];
    const tooLong = [[{ day: 0, minutes: 600, workers: [0] }]];
    const again = fitWork(problem, { plans: 5 }, seededRandom(1), {
      ...{ plan: tooLong, costPerMove: 3 },
      madeFor: signatureOf(problem),
    });
    expect(again.plan).toEqual(plan);
  });

  it('keeps the dry days for what needs them', () => {
    const dry = Uint8Array.from([1, 0, 0, 0]);
    const problem: WorkProblem = {
      days: 4,
      workers: [newWorker(4, 60)],
      jobs: [
        newJob({ id: 'indoors', dueDay: 3, untilDay: 3 }),
        newJob({ id: 'sowing', dueDay: 3, untilDay: 3, suits: dry }),
      ],
    };
    const { plan, cost, bound } = fit(problem);
    expect(plan.map(finishDay)).toEqual([1, 0]);
    expect(cost).toBe(bound);
  });

  it('lets go what costs least when not all fits', () => {
    const jobs = [30, 500, 80].map((lostCost, i) =>
      newJob({ id: `job ${i}`, lostCost, dueDay: 1, untilDay: 1 }),
    );
    const { plan, cost } = fit({ days: 2, workers: [newWorker(2, 60)], jobs });
    expect(plan[0]).toEqual([]);
    expect(cost).toBe(30);
  });

  it('waits out the days between two jobs', () => {
    const jobs = [
      newJob({ id: 'disinfect' }),
      newJob({ id: 'bed', waitsFor: [{ job: 0, days: 2 }] }),
    ];
    const { plan } = fit({ days: 10, workers: [newWorker(10, 600)], jobs });
    expect(plan.map(finishDay)).toEqual([0, 2]);
  });

  it('spreads a long job in useful pieces, and leaves a day with too little time alone', () => {
    const minutes = Int32Array.from([50, 20, 50, 50]);
    const problem: WorkProblem = {
      days: 4,
      workers: [{ minutes, lightMinutes: minutes }],
      jobs: [newJob({ minutes: 120, smallestPieceMinutes: 30, dueDay: 3, untilDay: 3 })],
    };
    expect(fit(problem).plan[0]!.map((piece) => [piece.day, piece.minutes])).toEqual([
      [0, 50],
      [2, 40],
      [3, 30],
    ]);
  });

  it('loses only the hours that do not fit, of the cheapest', () => {
    const job = { minutes: 120, smallestPieceMinutes: 30, dueDay: 2, untilDay: 2 };
    const jobs = [newJob({ ...job, lostCost: 50 }), newJob({ ...job, lostCost: 80 })];
    const { plan, cost } = fit({ days: 3, workers: [newWorker(3, 60)], jobs });
    expect(plan.map(placedMinutes)).toEqual([60, 120]);
    expect(cost).toBeCloseTo(25, 9); // 60 of 120 minutes of what costs 50
  });

  it('lets what waits for a bed that is dug in part follow its last piece', () => {
    const jobs = [
      newJob({
        minutes: 120,
        smallestPieceMinutes: 60,
        dueDay: 1,
        untilDay: 1,
        suits: Uint8Array.of(1, 0, 0, 0, 0, 0, 0, 0, 0, 0),
      }),
      newJob({ waitsFor: [{ job: 0, days: 1 }] }),
    ];
    const { plan } = fit({ days: 10, workers: [newWorker(10, 60)], jobs });
    expect(plan.map(finishDay)).toEqual([0, 1]);
  });

  it('never counts a part for more than nothing, nor for less than the whole', () => {
    const job = newJob({ minutes: 100, dueDay: 3, lateCostPerDay: 9, lostCost: 40 });
    const days = fc.uniqueArray(fc.nat(9), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(days, (list) => {
        const pieces = list
          .sort((a, b) => a - b)
          .map((day) => ({ day, minutes: 20, workers: [0] }));
        const costs = [0, ...pieces.keys()].map((k) => costOf(job, pieces.slice(0, k + 1)));
        expect([...costs].sort((a, b) => b - a)).toEqual(costs);
        expect(costs[0]).toBeLessThanOrEqual(costOf(job, []));
      }),
    );
    expect(costOf(job, [{ day: 5, minutes: 100, workers: [0] }])).toBe(18); // two days at 9
    expect(costOf(job, [{ day: 3, minutes: 50, workers: [0] }])).toBe(20); // half of 40
  });

  it('names jobs that wait for each other in a circle', () => {
    const jobs = [
      newJob({ waitsFor: [{ job: 1, days: 0 }] }),
      newJob({ waitsFor: [{ job: 0, days: 0 }] }),
    ];
    expect(() => fit({ days: 3, workers: [newWorker(3, 60)], jobs })).toThrow(RingError);
  });

  it('answers with the best so far when its looks are made', () => {
    const problem: WorkProblem = {
      days: 1,
      workers: [newWorker(1, 60)],
      jobs: Array.from({ length: 12 }, (_, i) =>
        newJob({ id: `${i}`, dueDay: 0, untilDay: 0, lostCost: i + 1 }),
      ),
    };
    const found = fitWork(problem, { plans: 1e9, looks: 2000 }, seededRandom(1));
    expect(found.plan.filter((pieces) => 0 < pieces.length)).toHaveLength(1);
    expect(found.bound).toBeLessThan(found.cost);
  });

  it('moves nothing away from what follows it within some days', () => {
    const only6 = Uint8Array.from({ length: 14 }, (_, day) => (day === 6 ? 1 : 0));
    const jobs = [
      newJob({ id: 'mow', minutes: 30, dueDay: 0, untilDay: 5, lateCostPerDay: 0, lostCost: 1 }),
      newJob({
        ...{ id: 'rake', minutes: 30, dueDay: 6, untilDay: 6 },
        waitsFor: [{ job: 0, days: 1, atMostDays: 1 }],
      }),
      newJob({
        ...{ id: 'bale', minutes: 30, suits: only6, dueDay: 6, untilDay: 6 },
        waitsFor: [{ job: 1, days: 0, atMostDays: 0 }],
      }),
    ];
    const free = [4, 5, 6];
    const minutes = Int32Array.from({ length: 14 }, (_, day) => (free.includes(day) ? 300 : 0));
    const problem = { days: 14, workers: [{ minutes, lightMinutes: minutes }], jobs };
    const { plan } = fit(problem);
    expect(brokenRules(problem, plan)).toEqual([]);
    expect(plan.map(([piece]) => piece!.day)).toEqual([5, 6, 6]);
  });

  it('takes nobody and no jobs', () => {
    expect(fit({ days: 3, workers: [], jobs: [] })).toMatchObject({ cost: 0, bound: 0 });
    expect(fit({ days: 3, workers: [], jobs: [newJob({ able: [] })] }).cost).toBe(100);
  });
});

describe('a plan made again', () => {
  it('does not keep pieces of work that may no longer be spread', () => {
    const spread = newJob({ minutes: 120, smallestPieceMinutes: 60 });
    const workers = [newWorker(10, 60)];
    const first = fitWork({ days: 10, workers, jobs: [spread] }, { plans: 5 }, seededRandom(1));
    expect(first.plan[0]).toHaveLength(2);
    const { smallestPieceMinutes: _spread, ...whole } = spread;
    const again = fitWork({ days: 10, workers, jobs: [whole] }, { plans: 5 }, seededRandom(1), {
      plan: first.plan,
      costPerMove: 3,
    });
    expect(again.plan[0]).toEqual([]); // nobody has two hours on one day
  });
});
