import { drawIndex, type Random } from './random.js';
import type { WorkState } from './work-state.js';
import type { WorkPiece, WorkProblem } from './work.js';

/** Jobs that may be taken out together: most, and how many days apart the nearest are. */
const MOST_JOBS = 14;
const NEAR_DAYS = 4;

/** What of a problem never changes while its plan is searched for. */
export interface Ruins {
  /** Jobs that can be moved at all. */
  readonly movable: readonly number[];
  /** Whether a job is left where it is. */
  readonly stays: (i: number) => boolean;
  readonly latest: readonly number[];
  /** By job the days between which it can be done at all. */
  readonly firstDay: Int32Array;
  readonly lastDay: Int32Array;
  /** By job which people can do it, as one number. */
  readonly crew: Int32Array;
  /** By two such numbers 1 where somebody can do both. */
  readonly crewsMeet: readonly Uint8Array[];
}

/**
 * What of a problem its plan is searched with.
 *
 * @param latest last day of each job
 * @param stays whether a job is left where it is
 */
export function ruinsOf(
  { jobs }: WorkProblem,
  latest: readonly number[],
  stays: (i: number) => boolean,
): Ruins {
  const crews = new Map<string, { readonly at: number; readonly able: readonly number[] }>();
  const crew = Int32Array.from(jobs, ({ able }) => {
    const key = able.join();
    const known = crews.get(key) ?? { at: crews.size, able };
    crews.set(key, known);
    return known.at;
  });
  const sets = [...crews.values()].map(({ able }) => able);
  return {
    movable: jobs.flatMap(({ pinned, able, peopleNeeded }, i) =>
      pinned || able.length < peopleNeeded || stays(i) ? [] : [i],
    ),
    latest,
    stays,
    firstDay: Int32Array.from(jobs, ({ fromDay }) => fromDay),
    lastDay: Int32Array.from(jobs, ({ untilDay }) => untilDay),
    crew,
    crewsMeet: sets.map((one) =>
      Uint8Array.from(sets, (other) => (one.some((w) => other.includes(w)) ? 1 : 0)),
    ),
  };
}

/**
 * A few related jobs to be taken out of a plan: one, often one that costs something, with others
 * that share its days and people or its chain; in the order in which to put them in again.
 */
export function drawnRuin(state: WorkState, ruins: Ruins, random: Random): number[] {
  const { movable, latest, stays } = ruins;
  const seed = drawnSeed(state, movable, random);
  const out = new Set([seed]);
  const size = 2 + drawIndex(random, Math.min(MOST_JOBS, movable.length) - 1);
  const kind = random();
  if (kind < CHAIN_SHARE) addChain(state, out, size);
  if (out.size < size) addNeighbors(state, ruins, seed, { out, size, random });
  const { jobs } = state.problem;
  // What waits for a job that is not in the plan comes along: it may fit once the other does.
  for (const i of out) {
    // So does what lies within days of it: neither could move alone.
    for (const { job, atMostDays } of jobs[i]!.waitsFor)
      if (isOut(state, job) || (atMostDays !== undefined && !jobs[job]!.pinned)) out.add(job);
    for (const { job, atMostDays } of state.followers[i]!)
      if (isOut(state, job) || (atMostDays !== undefined && !jobs[job]!.pinned)) out.add(job);
  }
  if (random() < FOLLOW_SHARE)
    for (const i of out)
      for (const { job } of state.followers[i]!) if (!jobs[job]!.pinned) out.add(job);
  const moved = [...out].filter((i) => !stays(i));
  return inDrawnOrder(moved, state, latest, random);
}

const CHAIN_SHARE = 0.25;
const FOLLOW_SHARE = 0.5;
const COSTLY_SHARE = 0.7;

const isOut = ({ pieces, problem }: WorkState, i: number): boolean =>
  pieces[i]!.length === 0 && !problem.jobs[i]!.pinned;

function drawnSeed({ costs }: WorkState, movable: readonly number[], random: Random): number {
  if (random() < COSTLY_SHARE) {
    let costly = 0;
    for (const i of movable) if (0 < costs[i]!) costly++;
    if (0 < costly) return nthCostly(costs, movable, drawIndex(random, costly));
  }
  return movable[drawIndex(random, movable.length)]!;
}

function nthCostly(costs: Float64Array, movable: readonly number[], n: number): number {
  let left = n;
  for (const i of movable) if (0 < costs[i]! && left-- === 0) return i;
  throw new RangeError(`There are no ${n + 1} jobs that cost something.`);
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
  { movable, firstDay, lastDay, crew, crewsMeet }: Ruins,
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
  const meets = crewsMeet[crew[seed]!]!;
  // Every try comes here with every job: what is cheap to ask is asked first, and nothing is made.
  const near: number[] = [];
  for (const i of movable) {
    if (day + reach < firstDay[i]! || lastDay[i]! < day - reach || meets[crew[i]!] === 0) continue;
    if (isThere(pieces[i]!, day, reach) && !out.has(i)) near.push(i);
  }
  while (out.size < size && 0 < near.length) {
    const k = drawIndex(random, near.length);
    out.add(near[k]!);
    near[k] = near.at(-1)!;
    near.pop();
  }
}

/** Of a job that may be done near a day: whether it is done there, or has no place at all. */
function isThere(places: readonly WorkPiece[], day: number, reach: number): boolean {
  for (const piece of places) if (Math.abs(piece.day - day) <= reach) return true;
  return places.length === 0;
}

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
