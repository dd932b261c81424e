import { drawIndex, type Random } from './random.js';
import type { WorkState } from './work-state.js';
import type { WorkJob } from './work.js';

/** Jobs that may be taken out together: most, and how many days apart the nearest are. */
const MOST_JOBS = 10;
const NEAR_DAYS = 4;

/** What of a problem never changes while its plan is searched for. */
export interface Ruins {
  /** Jobs that can be moved at all. */
  readonly movable: readonly number[];
  readonly latest: readonly number[];
}

/**
 * A few related jobs to be taken out of a plan: one, often one that costs something, with others
 * that share its days and people or its chain; in the order in which to put them in again.
 */
export function drawnRuin(state: WorkState, { movable, latest }: Ruins, random: Random): number[] {
  const seed = drawnSeed(state, movable, random);
  const out = new Set([seed]);
  const size = 2 + drawIndex(random, Math.min(MOST_JOBS, movable.length) - 1);
  const kind = random();
  if (kind < CHAIN_SHARE) addChain(state, out, size);
  if (out.size < size) addNeighbors(state, movable, seed, { out, size, random });
  const { jobs } = state.problem;
  // What waits for a job that is not in the plan comes along: it may fit once the other does.
  for (const i of out) {
    for (const { job } of jobs[i]!.waitsFor) if (isOut(state, job)) out.add(job);
    for (const { job } of state.followers[i]!) if (isOut(state, job)) out.add(job);
  }
  if (random() < FOLLOW_SHARE)
    for (const i of out)
      for (const { job } of state.followers[i]!) if (!jobs[job]!.pinned) out.add(job);
  return inDrawnOrder([...out], state, latest, random);
}

const CHAIN_SHARE = 0.25;
const FOLLOW_SHARE = 0.5;
const COSTLY_SHARE = 0.7;

const isOut = ({ pieces, problem }: WorkState, i: number): boolean =>
  pieces[i]!.length === 0 && !problem.jobs[i]!.pinned;

function drawnSeed({ costs }: WorkState, movable: readonly number[], random: Random): number {
  if (random() < COSTLY_SHARE) {
    const costly = movable.filter((i) => 0 < costs[i]!);
    if (0 < costly.length) return costly[drawIndex(random, costly.length)]!;
  }
  return movable[drawIndex(random, movable.length)]!;
}

function addChain(state: WorkState, out: Set<number>, size: number): void {
  for (const i of out) {
    for (const { job } of state.problem.jobs[i]!.waitsFor)
      if (out.size < size && !state.problem.jobs[job]!.pinned) out.add(job);
    for (const { job } of state.followers[i]!)
      if (out.size < size && !state.problem.jobs[job]!.pinned) out.add(job);
  }
}

/** Jobs near a day that the seed could take, that have to do with the same people. */
function addNeighbors(
  { problem, pieces }: WorkState,
  movable: readonly number[],
  seed: number,
  { out, size, random }: { out: Set<number>; size: number; random: Random },
): void {
  const job = problem.jobs[seed]!;
  const last = Math.max(
    job.fromDay,
    Math.min(
      job.untilDay,
      problem.days - 1,
      Math.max(job.dueDay, pieces[seed]![0]?.day ?? 0) + NEAR_DAYS,
    ),
  );
  const day = job.fromDay + drawIndex(random, last - job.fromDay + 1);
  const reach = drawIndex(random, 1 + 2 * NEAR_DAYS);
  const near = movable.filter((i) => {
    if (out.has(i)) return false;
    const other = problem.jobs[i]!;
    if (!sharePeople(job, other)) return false;
    const places = pieces[i]!;
    return places.length === 0
      ? other.fromDay <= day + reach && day - reach <= other.untilDay
      : places.some((piece) => Math.abs(piece.day - day) <= reach);
  });
  while (out.size < size && 0 < near.length) {
    const k = drawIndex(random, near.length);
    out.add(near[k]!);
    near[k] = near.at(-1)!;
    near.pop();
  }
}

const sharePeople = (one: WorkJob, other: WorkJob): boolean =>
  one.able.some((w) => other.able.includes(w));

/** By latest day, by what it costs, by length or as drawn: each finds what another does not. */
function inDrawnOrder(
  out: number[],
  { problem, costs }: WorkState,
  latest: readonly number[],
  random: Random,
): number[] {
  const kind = random();
  const key = new Map(
    out.map((i) => {
      const { lostCost, minutes, peopleNeeded, lateCostPerDay } = problem.jobs[i]!;
      if (kind < 0.3) return [i, random()];
      if (kind < 0.5) return [i, latest[i]! * (0.7 + 0.6 * random())];
      if (kind < 0.7) return [i, -(lostCost / (minutes * peopleNeeded)) * (0.5 + random())];
      if (kind < 0.8) return [i, -lateCostPerDay * (0.5 + random())];
      if (kind < 0.9) return [i, -costs[i]! * (0.5 + random())];
      return [i, -minutes * (0.5 + random())];
    }),
  );
  return out.sort((a, b) => key.get(a)! - key.get(b)!);
}
