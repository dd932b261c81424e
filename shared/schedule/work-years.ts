import type { WorkJob } from './work.js';

/** Days that suit each job in one year; `undefined` where all do. */
export type YearSuits = readonly (Uint8Array | undefined)[];

/** What became of one job in each year that was played. */
export interface PlayedJob {
  /** Day on which it was finished; -1 when it never was. */
  readonly finishes: Int16Array;
  /** Share of its minutes that were worked, 0 to 1. */
  readonly shares: Float32Array;
}

/** How a job fares over many years of weather. */
export interface JobChance {
  /** Share of years in which it is done by its due day. */
  readonly onTime: number;
  /** Share of years in which it is never finished, and in which some of it is done all the same. */
  readonly lost: number;
  readonly partly: number;
  /** Share of its work that is done in those, on average; 0 when there are none. */
  readonly partOfIt: number;
  /** Day by which it is done in half of the years, and in nearly all; -1 when it is not. */
  readonly halfDoneDay: number;
  readonly mostDoneDay: number;
  /** Standard error of `onTime`, from the number of years alone. */
  readonly standardError: number;
}

/**
 * Chances of a job from the years in which it was played.
 *
 * @param sureShare share of years that is called nearly all
 *
 * Source: Monte Carlo estimate of a share, standard error √(p(1 − p)/n).
 */
export function chanceOf(
  { finishes, shares }: PlayedJob,
  { dueDay }: Pick<WorkJob, 'dueDay'>,
  sureShare: number,
): JobChance {
  const n = finishes.length;
  let [onTime, lost, partly, parts] = [0, 0, 0, 0];
  finishes.forEach((day, year) => {
    if (0 <= day) return void (onTime += day <= dueDay ? 1 : 0);
    lost++;
    if (shares[year]! <= 0) return;
    partly++;
    parts += shares[year]!;
  });
  const done = finishes.filter((day) => 0 <= day).sort();
  const dayOf = (share: number): number => done[Math.ceil(share * n) - 1] ?? -1;
  return {
    onTime: onTime / n,
    lost: lost / n,
    partly: partly / n,
    partOfIt: partly === 0 ? 0 : parts / partly,
    halfDoneDay: dayOf(0.5),
    mostDoneDay: dayOf(sureShare),
    standardError: Math.sqrt(((onTime / n) * (1 - onTime / n)) / n),
  };
}

/** How much likelier one play of the same years makes a job than another. */
export interface ChanceGain {
  readonly gain: number;
  /** Standard error of the gain: smaller than that of two plays of different years. */
  readonly standardError: number;
}

/**
 * What a change does to the chance of a job, year against year.
 *
 * Source: common random numbers, error of the mean of paired differences.
 */
export function gainOf(
  before: Int16Array,
  after: Int16Array,
  { dueDay }: Pick<WorkJob, 'dueDay'>,
): ChanceGain {
  const n = after.length;
  const isIn = (day: number): number => (0 <= day && day <= dueDay ? 1 : 0);
  let [sum, squares] = [0, 0];
  for (let year = 0; year < n; year++) {
    const difference = isIn(after[year]!) - isIn(before[year]!);
    sum += difference;
    squares += difference * difference;
  }
  const gain = sum / n;
  return { gain, standardError: Math.sqrt(Math.max(0, squares / n - gain * gain) / n) };
}
