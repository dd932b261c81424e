import fc from 'fast-check';
import type { WorkJob, WorkProblem, Worker } from '../../shared/schedule/work.js';

/** A valid job of an hour for one person. A test writes only what it is about. */
export const newJob = (more: Partial<WorkJob> = {}): WorkJob => ({
  id: 'job',
  minutes: 60,
  peopleNeeded: 1,
  able: [0],
  fromDay: 0,
  dueDay: 9,
  untilDay: 9,
  waitsFor: [],
  lateCostPerDay: 1,
  lostCost: 100,
  ...more,
});

/** Somebody with the same minutes every day, all of them in daylight. */
export const newWorker = (days: number, minutes: number): Worker => ({
  minutes: new Int32Array(days).fill(minutes),
  lightMinutes: new Int32Array(days).fill(minutes),
});

const mask = (days: number) =>
  fc
    .array(fc.constantFrom(0, 1), { minLength: days, maxLength: days })
    .map((list) => Uint8Array.from(list));

interface Shape {
  readonly days: number;
  readonly workers: number;
  readonly jobs: number;
  readonly spread: boolean;
}

/** Problems of any kind: people away, weather, chains, two-person jobs, windows that close. */
export function anyProblem({ days, workers, jobs, spread }: Shape): fc.Arbitrary<WorkProblem> {
  const worker = fc
    .array(fc.constantFrom(0, 60, 120, 300), { minLength: days, maxLength: days })
    .chain((minutes) =>
      fc
        .array(fc.constantFrom(0, 60, 200), { minLength: days, maxLength: days })
        .map((light): Worker => ({
          minutes: Int32Array.from(minutes),
          lightMinutes: Int32Array.from(light, (m, d) => Math.min(m, minutes[d]!)),
        })),
    );
  const job = fc
    .record({
      minutes: fc.constantFrom(30, 60, 90, 120),
      peopleNeeded: fc.constantFrom(1, 1, 1, 2),
      able: fc.subarray(
        Array.from({ length: workers }, (_, w) => w),
        { minLength: 1 },
      ),
      smallest: fc.constantFrom(undefined, 30, 60),
      fromDay: fc.integer({ min: 0, max: days - 1 }),
      due: fc.integer({ min: 0, max: days }),
      late: fc.integer({ min: 0, max: days }),
      suits: fc.option(mask(days), { nil: undefined }),
      needsLight: fc.boolean(),
      wait: fc.option(
        fc.record({
          back: fc.integer({ min: 1, max: 3 }),
          days: fc.nat(2),
          within: fc.option(fc.nat(1), { nil: undefined }),
        }),
      ),
      lateCostPerDay: fc.integer({ min: 0, max: 9 }),
      lostCost: fc.integer({ min: 1, max: 90 }),
    })
    .map(({ smallest, due, late, suits, wait, ...rest }) => (i: number): WorkJob => ({
      ...rest,
      id: `job ${i}`,
      dueDay: Math.min(days - 1, rest.fromDay + due),
      untilDay: Math.min(days - 1, rest.fromDay + due + late),
      ...(spread && smallest !== undefined ? { smallestPieceMinutes: smallest } : {}),
      ...(suits ? { suits } : {}),
      waitsFor:
        wait && wait.back <= i
          ? [
              {
                job: i - wait.back,
                days: wait.days,
                ...(wait.within === undefined ? {} : { atMostDays: wait.days + wait.within }),
              },
            ]
          : [],
    }));
  return fc
    .tuple(
      fc.array(worker, { minLength: workers, maxLength: workers }),
      fc.array(job, { minLength: 1, maxLength: jobs }),
      fc.option(fc.array(fc.constantFrom(0, 60, 120), { minLength: days, maxLength: days })),
    )
    .map(([people, makers, atOnce]) => ({
      days,
      workers: atOnce && 1 < workers ? firstApart(people, atOnce) : people,
      jobs: withTiesOfWhole(makers.map((make, i) => make(i))),
    }));
}

/** The first two have no more than so many minutes of a day at the same hours. */
function firstApart([a, b, ...rest]: readonly Worker[], most: readonly number[]): Worker[] {
  const both = a!.minutes.map((minutes, day) => Math.min(minutes, b!.minutes[day]!, most[day]!));
  return [{ ...a!, together: new Map([[1, both]]) }, b!, ...rest];
}

/** Only between jobs that are done in one go is there a longest wait. */
const withTiesOfWhole = (jobs: readonly WorkJob[]): WorkJob[] =>
  jobs.map((job) => ({
    ...job,
    waitsFor: job.waitsFor.map(({ atMostDays, ...wait }) => {
      const isWhole = [job, jobs[wait.job]!].every((each) => !each.smallestPieceMinutes);
      return atMostDays === undefined || !isWhole ? wait : { ...wait, atMostDays };
    }),
  }));
