import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { playedSky } from '../../shared/schedule/played-sky.js';
import { seededRandom } from '../../shared/schedule/random.js';
import { playYears } from '../../shared/schedule/week-play.js';
import { workNetwork } from '../../shared/schedule/work-network.js';
import { chanceOf, gainOf, type YearSuits } from '../../shared/schedule/work-years.js';
import type { WorkJob, WorkProblem } from '../../shared/schedule/work.js';
import { anyProblem, newJob, newWorker } from '../support/work-factories.js';

const DAYS = 21;
const RIGHT = [1, 1, 1, 1, 1, 1, 1];
const WRONG = [0, 0, 0, 0, 0, 0, 0];
const dryOn = (...days: number[]): Uint8Array =>
  Uint8Array.from({ length: DAYS }, (_, day) => (days.includes(day) ? 1 : 0));

const problemOf = (jobs: Partial<WorkJob>[], minutes = 60): WorkProblem => ({
  days: DAYS,
  workers: [newWorker(DAYS, minutes)],
  jobs: jobs.map((job) => newJob({ untilDay: DAYS - 1, dueDay: DAYS - 1, ...job })),
});

const play = (
  problem: WorkProblem,
  years: YearSuits[],
  { right = RIGHT, first }: { right?: number[]; first?: number } = {},
) => {
  const list = Int32Array.from(workNetwork(problem.jobs).order);
  const sky = playedSky(years, problem.days, { rightShares: right }, seededRandom(1));
  return playYears(problem, { list, ...(first === undefined ? {} : { first }) }, sky);
};

describe('playYears', () => {
  it('does work on the first day of its dates that suits it, where forecasts hold', () => {
    const years = [[1, 5], [3], [12], []].map((days): YearSuits => [dryOn(...days)]);
    const [played] = play(problemOf([{ dueDay: 3 }]), years);
    expect([...played!.finishes]).toEqual([1, 3, 12, -1]);
    expect(chanceOf(played!, { dueDay: 3 }, 0.75)).toEqual({
      onTime: 0.5, // days 1 and 3 of four years
      lost: 0.25,
      partly: 0,
      partOfIt: 0,
      halfDoneDay: 3,
      mostDoneDay: 12, // in three of four years
      standardError: 0.25, // √(0.5 · 0.5 / 4)
    });
  });

  it('leaves undone what was planned for a day that turns out unfit, and loses its hours', () => {
    // Two kinds of years; every forecast is of any year, so that half of them are wrong.
    const years = Array.from({ length: 200 }, (_, y): YearSuits => [
      y % 2 === 0 ? dryOn(0) : dryOn(1),
      undefined,
    ]);
    const problem = problemOf([
      { untilDay: 1, dueDay: 1, lostCost: 1000 },
      { untilDay: 1, dueDay: 1 },
    ]);
    const [outside, inside] = play(problem, years, { right: WRONG });
    expect(chanceOf(outside!, { dueDay: 1 }, 0.9).onTime).toBeLessThan(0.85);
    expect(chanceOf(inside!, { dueDay: 1 }, 0.9).onTime).toBe(1);
    // Where nothing is left but the day that failed, its hours are gone.
    const one = problemOf([
      { dueDay: 0, untilDay: 0, lostCost: 1000 },
      { dueDay: 0, untilDay: 0 },
    ]);
    const wet: YearSuits[] = [
      [dryOn(), undefined],
      [dryOn(0), undefined],
    ];
    const lost = [1, 2, 3, 4, 5, 6].map((seed) => {
      const sky = playedSky(wet, DAYS, { rightShares: WRONG }, seededRandom(seed));
      const isForecastDry = sky.forecast[0]![0]![0] === 1;
      const [, other] = playYears(one, { list: Int32Array.from([0, 1]) }, sky);
      return [isForecastDry, other!.finishes[0] === -1];
    });
    lost.forEach(([isForecastDry, isLost]) => expect(isLost).toBe(isForecastDry));
    expect(new Set(lost.map(([isForecastDry]) => isForecastDry)).size).toBe(2);
  });

  it('keeps what is done of work that may be spread when its last day is past', () => {
    const job = { minutes: 240, smallestPieceMinutes: 30, untilDay: 2, dueDay: 2 };
    const [played] = play(problemOf([job]), [[undefined]]);
    expect(played!.finishes[0]).toBe(-1);
    expect(played!.shares[0]).toBeCloseTo(0.75, 6); // three hours of four
    expect(chanceOf(played!, job, 0.9)).toMatchObject({ lost: 1, partly: 1, partOfIt: 0.75 });
  });

  it('does first what usual weather would leave no other day for', () => {
    const jobs = [{}, { dueDay: 6, untilDay: 6 }, { dueDay: 0, untilDay: 0 }];
    const [free, soon, now] = play(problemOf(jobs), [[undefined, undefined, undefined]]);
    expect([now, soon, free].map((played) => played!.finishes[0])).toEqual([0, 1, 2]);
  });

  it('takes one job before all others when asked to, with what it waits for', () => {
    const jobs = [
      { dueDay: 0, untilDay: 0, lostCost: 900 },
      { dueDay: 20 },
      { dueDay: 20, waitsFor: [{ job: 1, days: 1 }] },
    ];
    const years: YearSuits[] = [[undefined, undefined, undefined]];
    expect(play(problemOf(jobs), years)[0]!.finishes[0]).toBe(0);
    const [urgent, before, first] = play(problemOf(jobs), years, { first: 2 });
    expect([before, first, urgent].map((played) => played!.finishes[0])).toEqual([0, 1, -1]);
  });

  it('never works outside dates, fit days, waits or hours, and plays the same again', () => {
    const shape = { days: DAYS, workers: 2, jobs: 8, spread: true };
    fc.assert(
      fc.property(anyProblem(shape), fc.nat(), (problem, seed) => {
        const random = seededRandom(seed);
        const drawn = (): Uint8Array =>
          Uint8Array.from({ length: DAYS }, () => (random() < 0.5 ? 1 : 0));
        const years = Array.from({ length: 4 }, (): YearSuits =>
          problem.jobs.map((job) => (job.suits ? drawn() : undefined)),
        );
        const right = [0.9, 0.9, 0.9, 0.9, 0.9, 0.8, 0.8];
        const played = play(problem, years, { right });
        expect(play(problem, years, { right })).toEqual(played);
        const hours = problem.workers.reduce(
          (sum, { minutes }) => sum + minutes.reduce((a, b) => a + b, 0),
          0,
        );
        years.forEach((suits, year) => {
          let worked = 0;
          problem.jobs.forEach((job, i) => {
            const day = played[i]!.finishes[year]!;
            const share = played[i]!.shares[year]!;
            worked += share * job.minutes * job.peopleNeeded;
            expect(share === 1).toBe(0 <= day);
            if (job.smallestPieceMinutes === undefined) expect(share).toBe(0 <= day ? 1 : 0);
            if (day < 0) return;
            expect(job.fromDay <= day && day <= job.untilDay).toBe(true);
            expect(suits[i]?.[day]).not.toBe(0);
            for (const wait of job.waitsFor) {
              const done = played[wait.job]!.finishes[year]!;
              const isPart = 0 < played[wait.job]!.shares[year]!;
              const over = done < 0 && isPart ? problem.jobs[wait.job]!.untilDay : done;
              expect(0 <= over && over + wait.days <= day).toBe(true);
            }
          });
          expect(worked).toBeLessThanOrEqual(hours + 1e-3);
        });
      }),
      { numRuns: 60 },
    );
  });
});

describe('playedSky', () => {
  it('forecasts as many days rightly as it is told, by days ahead', () => {
    const years = Array.from({ length: 400 }, (_, y): YearSuits => [
      new Uint8Array(70).fill(y < 200 ? 1 : 0),
    ]);
    const sky = playedSky(years, 70, { rightShares: [1, 0.5] }, seededRandom(2));
    const rightOn = (ahead: number): number => {
      let [right, all] = [0, 0];
      sky.forecast.forEach((kinds, y) =>
        kinds[0]!.forEach((is, day) => {
          if (day % 2 !== ahead) return;
          all++;
          if (is === sky.real[y]![0]![day]) right++;
        }),
      );
      return right / all;
    };
    expect(rightOn(0)).toBe(1);
    expect(rightOn(1)).toBeCloseTo(0.75, 1); // half hold; of the others half are right by chance
    expect(sky.usual[0]![3]).toBeCloseTo(0.5, 12);
    // A run of two days has one day in it that may fail, whichever is its first.
    const runs = playedSky(years, 70, { rightShares: [1, 0.5], runDays: [2] }, seededRandom(2));
    const rightRuns = runs.forecast.map(
      (kinds, y) =>
        kinds[0]!.slice(0, 69).filter((is, day) => is === runs.real[y]![0]![day]).length,
    );
    expect(rightRuns.reduce((sum, n) => sum + n, 0) / (400 * 69)).toBeCloseTo(0.75, 1);
  });
});

describe('gainOf', () => {
  it('is the mean of differences, year against year, with the error of that', () => {
    const [before, after] = [
      [-1, -1, 3, 9],
      [2, -1, 3, 4],
    ].map((days) => Int16Array.from(days));
    const { gain, standardError } = gainOf(before!, after!, { dueDay: 5 });
    expect(gain).toBe(0.5); // two of four years are in time now that were not
    expect(standardError).toBeCloseTo(Math.sqrt(0.25 / 4), 12);
  });
});
