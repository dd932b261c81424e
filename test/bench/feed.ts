/**
 * Buying feed: how long a year takes, and how far plans are from the least that a general-purpose
 * solver proves on cases small enough for it.
 */
import * as solver from 'highs';
import type { Highs } from 'highs';
import type { BuyingProblem, FeedItem, Offer } from '../../shared/buying/buying-problem.js';
import { planBuying } from '../../shared/buying/plan-buying.js';
import { drawIndex, seededRandom, type Random } from '../../shared/schedule/random.js';
import { buyingProgram, costOfTiers, SHORT_COST } from '../support/buying-program.js';
import { randomFeeds } from '../support/random-feeds.js';

type Print = (name: string, value: number, unit: string, runs: number) => void;

const YEARS = 10;
const DAYS = 365;
const SMALL_CASES = 30;
const SOLVER_SECONDS = 20;

export async function benchFeed(print: Print): Promise<void> {
  const years = Array.from({ length: YEARS }, (_, k) => yearOfFeed(seededRandom(k + 1)));
  const times = years.map((problem) => {
    const before = process.cpuUsage();
    const start = performance.now();
    planBuying(problem);
    const { user } = process.cpuUsage(before);
    return { wall: performance.now() - start, user: user / 1000 };
  });
  print(
    'buying of a year, 6 batches, 12 feeds, 3 suppliers',
    median(times.map((t) => t.wall)),
    'ms',
    YEARS,
  );
  print('buying of a year, user CPU', median(times.map((t) => t.user)), 'ms', YEARS);
  const longer = years.map((problem) => {
    const [usual, long] = [planBuying(problem), planBuying(problem, 20_000)];
    return (100 * (usual.cost - long.cost)) / long.cost;
  });
  print('buying of a year over the best of 20 times the tries', mean(longer), '%', YEARS);
  await benchGap(print);
}

async function benchGap(print: Print): Promise<void> {
  const highs = await (solver.default as unknown as () => Promise<Highs>)();
  const size = { days: 20, suppliers: 2, items: 3, offers: 2, handDays: 2, keepsDays: 8 };
  const gaps: number[] = [];
  for (let seed = 1; seed <= SMALL_CASES; seed++) {
    const feeds = randomFeeds(seededRandom(seed), { ...size, stock: true });
    const solved = highs.solve(buyingProgram(feeds), {
      mip_rel_gap: 0,
      time_limit: SOLVER_SECONDS,
    });
    if (solved.Status !== 'Optimal') continue;
    const plan = planBuying(feeds.problem);
    const shortKg = plan.short.reduce((sum, { kg }) => sum + kg, 0);
    const least = solved.ObjectiveValue - SHORT_COST * shortKg;
    gaps.push((100 * (plan.cost - least)) / least);
  }
  print('buying over the proven least, small cases', mean(gaps), '%', gaps.length);
  print(
    'buying at the proven least, small cases',
    gaps.filter((gap) => gap < 0.01).length,
    'count',
    gaps.length,
  );
}

/** Three batches of meat birds on three feeds, two of pullets, hens all year; twelve feeds sold. */
function yearOfFeed(random: Random): BuyingProblem {
  const suppliers = [700, 1600, 2500].map((tripCost, s) => ({
    tripCost,
    days: Uint8Array.from({ length: DAYS }, (_, day) =>
      s <= day && (s === 0 ? day % 7 !== 6 : s === 1 ? [1, 4, 5].includes(day % 7) : day % 7 === 2)
        ? 1
        : 0,
    ),
  }));
  const starts = [60, 130, 200].map((day) => day + drawIndex(random, 30));
  const season = (of: readonly number[], from: number, to: number, kg: number) =>
    Float64Array.from({ length: DAYS }, (_, day) =>
      of.reduce((sum, start) => sum + (start + from <= day && day < start + to ? kg : 0), 0),
    );
  const each = (kg: number): number => kg * (0.7 + 0.6 * random());
  const pullets = [starts[0]! - 20, starts[1]!];
  const needs = [
    season(starts, 0, 21, each(3)),
    season(starts, 21, 42, each(9)),
    season(starts, 42, 56, each(11)),
    season(pullets, 0, 42, each(0.6)),
    season(pullets, 42, 98, each(1)),
    season(pullets, 98, 150, each(1.2)),
    season([0], 0, DAYS, each(4.5)),
  ];
  // Twelve feeds: the meat birds' and the hens' are sold by two, three of them with steps.
  const sold = [[1], [1, 2], [1, 2], [0], [0], [0, 1], [0, 1, 2]];
  const items = needs.map((needKg, i): FeedItem => ({
    needKg,
    stock: [],
    offers: sold[i]!.map((supplier): Offer => {
      const price = 2100 + 10 * drawIndex(random, 40);
      const steps = [
        { fromBags: 0, each: price },
        ...(supplier === 0 ? [] : [{ fromBags: 6 + drawIndex(random, 6), each: price - 170 }]),
      ];
      const breaks = steps.slice(1).map(({ fromBags }) => fromBags);
      return {
        supplier,
        bagKg: 22.68,
        keepsDays: supplier === 0 ? 60 : 45,
        breaks,
        costOf: costOfTiers(steps),
      };
    }),
  }));
  return { days: DAYS, suppliers, items, storeKg: 700, handDays: 5 };
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, each) => sum + each, 0) / Math.max(1, values.length);
const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
