import { addDays } from '../../calendar/plain-date.js';
import { round6 } from '../../explain/quantity.js';
import { latestStart } from '../../schedule/latest-start.js';
import { crewHours } from '../../schedule/usual-ahead.js';
import { chanceOf, type PlayedJob } from '../../schedule/work-years.js';
import { percentile } from '../../weather/climate.js';
import type { BetterOdds } from './better-odds.js';
import { asksForWeather } from './days-that-suit.js';
import type { PlayedWork } from './played-work.js';
import type { WholeWork } from './whole-work.js';
import type { WorkNeed } from './work-need.js';
import type { Unlikely } from './why-unlikely.js';

/** How many of something in few, half and most years, by the share that is nearly always. */
export interface CountSpread {
  readonly tenth: number;
  readonly half: number;
  readonly ninetieth: number;
}

export interface JobOutlook {
  readonly key: string;
  readonly name: string;
  readonly belongsTo?: WorkNeed['belongsTo'];
  readonly priority: WorkNeed['priority'];
  readonly latest: string;
  /** Its latest day is past: what is told is whether it is done at all. */
  readonly alreadyLate: boolean;
  /** Share of years in which it is done by its latest day, and the error of that share. */
  readonly chance: number;
  readonly standardError: number;
  /** Share of years in which it is never finished, and of those in which part of it is done. */
  readonly lost: number;
  readonly partly: number;
  /** How much of it is done in those, on average. */
  readonly partOfIt: number;
  /** Day by which it is done in half of the years, and in nine of ten. */
  readonly usuallyBy?: string;
  readonly nearlyAlwaysBy?: string;
  /** Last day to begin it and still be done in time in nine years of ten, its hours kept free. */
  readonly startBySafe?: string;
  /** The same, were it a quarter longer. */
  readonly startByIfLonger?: string;
  /** Days between its first and its latest, and how many of them suit it. */
  readonly windowDays: number;
  readonly suitableDays?: CountSpread & {
    /** Share of them that suit, over all years. */
    readonly share: number;
  };
  /** It may be done on a few days only, none of them forecast yet: those are told, no chance. */
  readonly isFewDays: boolean;
  /** Of work that is unlikely to be done in time: what it lacks, and what it waits for. */
  readonly lacks?: Unlikely['lacks'];
  readonly waitsFor?: { readonly key: string; readonly name: string };
  /** What would raise its odds, the most first. */
  readonly better: readonly BetterOdds[];
}

/** By so much work easily takes longer than it is planned with. */
const LONGER = 1.25;

/** What became of the work, as it was played. */
export interface PlayedOutcome {
  readonly base: readonly PlayedJob[];
  readonly unlikely: readonly Unlikely[];
  readonly better: ReadonlyMap<number, readonly BetterOdds[]>;
}

/** Each piece of work whose latest day lies within the plan: what became of it over the years. */
export function jobOutlooks(
  { request, needs }: WholeWork,
  { problem, windows, suits }: PlayedWork,
  { base, unlikely, better }: PlayedOutcome,
): JobOutlook[] {
  const { sureShare, fewDays } = request.tables.judgements.work;
  const forecastDays = request.tables.work.forecast.rightShares.length;
  const dateOf = (day: number): string => addDays(request.today, day);
  const why = new Map(unlikely.map((each) => [each.index, each]));
  const togetherOf = crewHours(problem);
  return needs.flatMap((need, i): JobOutlook[] => {
    const { latestDay, earliestDay } = windows[i]!;
    const job = problem.jobs[i]!;
    if (problem.days <= latestDay) return [];
    const chance = chanceOf(base[i]!, job, sureShare.value);
    const startIf = (minutes: number): number =>
      suits
        .map((of) => latestStart({ ...job, minutes }, latestDay, togetherOf(job), of[i]))
        .sort((a, b) => a - b)[Math.floor(suits.length * round6(1 - sureShare.value))]!;
    const startBy = startIf(job.minutes);
    const ifLonger = startIf(Math.round(LONGER * job.minutes));
    const from = Math.max(0, earliestDay);
    const windowDays = Math.max(0, latestDay - from + 1);
    const asksForDays = asksForWeather(need.conditions) && 0 < windowDays;
    const waits = why.get(i)?.waitsFor;
    return [
      {
        key: need.key,
        name: need.name,
        ...(need.belongsTo ? { belongsTo: need.belongsTo } : {}),
        priority: need.priority,
        latest: dateOf(latestDay),
        alreadyLate: latestDay < 0,
        chance: chance.onTime,
        standardError: chance.standardError,
        ...{ lost: chance.lost, partly: chance.partly, partOfIt: chance.partOfIt },
        ...(chance.halfDoneDay < 0 ? {} : { usuallyBy: dateOf(chance.halfDoneDay) }),
        ...(chance.mostDoneDay < 0 ? {} : { nearlyAlwaysBy: dateOf(chance.mostDoneDay) }),
        ...(startBy < 0 ? {} : { startBySafe: dateOf(startBy) }),
        ...(ifLonger < 0 ? {} : { startByIfLonger: dateOf(ifLonger) }),
        windowDays,
        ...(asksForDays
          ? {
              suitableDays: suitableOf(
                countsOf(suits, i, from, latestDay),
                windowDays,
                sureShare.value,
              ),
            }
          : {}),
        isFewDays: asksForDays && forecastDays <= from && windowDays <= fewDays.value,
        ...(why.has(i) ? { lacks: why.get(i)!.lacks } : {}),
        ...(waits === undefined
          ? {}
          : { waitsFor: { key: needs[waits]!.key, name: needs[waits]!.name } }),
        better: better.get(i) ?? [],
      },
    ];
  });
}

const countsOf = (suits: PlayedWork['suits'], i: number, from: number, to: number): number[] =>
  suits.map((of) => countBetween(of[i]!, from, to));

const suitableOf = (counts: readonly number[], windowDays: number, sureShare: number) => ({
  ...spread(counts, sureShare),
  share: counts.reduce((sum, count) => sum + count, 0) / (counts.length * windowDays),
});

/** How many days between two are marked. */
export function countBetween(is: Uint8Array, from: number, to: number): number {
  let count = 0;
  for (let day = from; day <= Math.min(to, is.length - 1); day++) count += is[day]!;
  return count;
}

/** Counts of many years as they are told. */
export function spread(counts: readonly number[], sureShare: number): CountSpread {
  const sorted = [...counts].sort((a, b) => a - b);
  const at = (share: number): number => Math.round(percentile(sorted, share));
  return { tenth: at(round6(1 - sureShare)), half: at(0.5), ninetieth: at(sureShare) };
}
