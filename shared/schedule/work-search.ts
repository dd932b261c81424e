import type { ActivityNetwork } from './activity-network.js';
import { drawIndex, type Random } from './random.js';
import { WorkDays } from './work-days.js';
import { workNetwork } from './work-network.js';
import { costBound, placeInOrder, type PlacedWork } from './work-placing.js';
import { workWindows } from './work-windows.js';
import { daysLeft } from './work-reasons.js';
import { drawnEarlier } from './work-settling.js';
import {
  costOf,
  type WorkJob,
  type WorkPiece,
  type WorkPlacing,
  type WorkProblem,
} from './work.js';

export interface FittedWork {
  readonly plan: WorkPlacing;
  readonly cost: number;
  /** No plan costs less; equal to the cost, the plan is proven best. */
  readonly bound: number;
  /** Plans that were tried. */
  readonly tried: number;
}

export interface WorkLimits {
  /** Plans to try, at most. */
  readonly plans: number;
  /** Asked now and then; the best plan so far is given once it says yes. */
  readonly isTimeUp?: () => boolean;
}

/** An earlier plan, and what it counts for to stay with it. */
export interface EarlierWork {
  readonly plan: WorkPlacing;
  /** Cost of moving one job to other days. */
  readonly costPerMove: number;
}

/** A job that is late costs little beside one that is lost; below this, costs are equal. */
const EQUAL = 1e-9;

/**
 * Fits jobs into people's hours and days so that what is late or lost costs least.
 *
 * Starts from lists by latest day, by cost and by the earlier plan, then moves jobs that cost
 * something forward in the list, and others about, keeping what is no worse. With an earlier plan
 * nothing moves that does not save more than moving costs.
 *
 * @throws RingError when jobs wait for each other in a circle
 */
export function fitWork(
  problem: WorkProblem,
  limits: WorkLimits,
  random: Random,
  earlier?: EarlierWork,
): FittedWork {
  const network = workNetwork(problem.jobs);
  const bound = costBound(problem, network.order);
  const days = new WorkDays(problem);
  let tried = 0;
  const tryOrder = (order: Order): Tried => {
    tried++;
    const { list, jobs } = order;
    const placed = placeInOrder({ ...problem, jobs }, days, list, earlier?.plan);
    return { ...placed, ...order, total: placed.cost + movesCost(placed, earlier) };
  };
  const starts = startLists(problem, network, earlier?.plan);
  let now = starts
    .slice(0, Math.max(1, limits.plans))
    .map((list) => tryOrder({ list, jobs: problem.jobs }))
    .reduce((best, each) => (each.total < best.total - EQUAL ? each : best));
  let best = now;
  while (tried < limits.plans && bound + EQUAL < best.total && !limits.isTimeUp?.()) {
    const next = tryOrder(neighbor(problem, network, now, random));
    if (next.total <= now.total + EQUAL) now = next;
    if (now.total < best.total - EQUAL) best = now;
  }
  const plan = drawnEarlier(problem, network, best.pieces, {
    days: daysLeft(problem, best.pieces),
    stays: (i) => isSame(best.pieces[i]!, earlier?.plan[i]),
  });
  return { plan, cost: costOfPlan(problem, plan), bound, tried };
}

/** What a plan is made from: the jobs in turn, some of them left to certain people only. */
interface Order {
  readonly list: Int32Array;
  readonly jobs: readonly WorkJob[];
}

interface Tried extends PlacedWork, Order {
  readonly total: number;
}

/** Pieces on the same days as in an earlier plan. */
const isSame = (now: readonly WorkPiece[], was: readonly WorkPiece[] | undefined): boolean =>
  was?.length === now.length && was.every((piece, k) => piece.day === now[k]!.day);

const costOfPlan = ({ jobs }: WorkProblem, plan: WorkPlacing): number =>
  jobs.reduce((sum, job, i) => sum + costOf(job, plan[i]!), 0);

function movesCost({ pieces }: PlacedWork, earlier: EarlierWork | undefined): number {
  if (!earlier) return 0;
  let moved = 0;
  pieces.forEach((now, i) => {
    const was = earlier.plan[i] ?? [];
    if (0 < was.length && !isSame(now, was)) moved++;
  });
  return moved * earlier.costPerMove;
}

/** Lists to start from: by latest day, by what it costs to be late, by the earlier plan. */
function startLists(
  { jobs }: WorkProblem,
  network: ActivityNetwork,
  was: WorkPlacing | undefined,
): Int32Array[] {
  const windows = workWindows(jobs, network);
  const heaviest = jobs.reduce((most, { lostCost }) => Math.max(most, lostCost), 1);
  const byLatest = (i: number): number => windows[i]!.latestDay;
  const byCost = (i: number): number => windows[i]!.latestDay - (30 * jobs[i]!.lostCost) / heaviest;
  const keys = [byLatest, byCost];
  if (was) keys.unshift((i) => (was[i]?.[0] ? was[i][0].day - 1000 : byLatest(i)));
  return keys.map((key) =>
    inOrderOf(
      network,
      Float64Array.from(jobs, (_, i) => key(i)),
    ),
  );
}

/** Every job once, the smallest key first among those that wait for nothing. */
export function inOrderOf(network: ActivityNetwork, keys: Float64Array): Int32Array {
  const { count, before, beforeAt, after, afterAt } = network;
  const waiting = new Int32Array(count);
  const ready: number[] = [];
  // What a job holds up is as urgent as what waits for it.
  const urgent = keys.slice();
  for (let k = count - 1; 0 <= k; k--) {
    const i = network.order[k]!;
    for (let b = beforeAt[i]!; b < beforeAt[i + 1]!; b++)
      urgent[before[b]!] = Math.min(urgent[before[b]!]!, urgent[i]!);
  }
  for (let i = 0; i < count; i++) {
    waiting[i] = beforeAt[i + 1]! - beforeAt[i]!;
    if (waiting[i] === 0) ready.push(i);
  }
  const list = new Int32Array(count);
  for (let k = 0; k < count; k++) {
    let at = 0;
    for (let r = 1; r < ready.length; r++) {
      const [one, other] = [ready[r]!, ready[at]!];
      if (urgent[one]! < urgent[other]! || (urgent[one] === urgent[other] && one < other)) at = r;
    }
    const [i] = ready.splice(at, 1) as [number];
    list[k] = i;
    for (let a = afterAt[i]!; a < afterAt[i + 1]!; a++)
      if (--waiting[after[a]!]! === 0) ready.push(after[a]!);
  }
  return list;
}

/**
 * An order a little different: mostly a job that costs something is drawn forward or any is put
 * elsewhere, now and then a job is left to certain people, or to anyone again.
 */
function neighbor(
  problem: WorkProblem,
  network: ActivityNetwork,
  { list, jobs, pieces }: Tried,
  random: Random,
): Order {
  if (random() < SHARE_WHO) return { list, jobs: leftToSome(problem, jobs, random) };
  const costly = jobs.flatMap((job, i) => (0 < costOf(job, pieces[i]!) ? [i] : []));
  const position = new Int32Array(list.length);
  list.forEach((i, k) => (position[i] = k));
  const isForward = 0 < costly.length && random() < 0.75;
  const i = isForward
    ? costly[drawIndex(random, costly.length)]!
    : list[drawIndex(random, list.length)]!;
  return {
    jobs,
    list: isForward
      ? drawnForward(network, list, position, i, drawIndex(random, position[i]! + 1))
      : putElsewhere(network, list, position, i, random),
  };
}

/** How often an order changes who does a job instead of when. */
const SHARE_WHO = 0.2;

function leftToSome(
  problem: WorkProblem,
  jobs: readonly WorkJob[],
  random: Random,
): readonly WorkJob[] {
  const shared = problem.jobs.flatMap(({ able, peopleNeeded: people }, i) =>
    people < able.length ? [i] : [],
  );
  if (shared.length === 0) return jobs;
  const i = shared[drawIndex(random, shared.length)]!;
  const job = problem.jobs[i]!;
  const isFree = jobs[i] === job;
  const able = [...job.able];
  while (job.peopleNeeded < able.length) able.splice(drawIndex(random, able.length), 1);
  return jobs.with(i, isFree || random() < 0.5 ? { ...job, able } : job);
}

/** A job and all it waits for, brought before what stands at a place of the list. */
function drawnForward(
  { before, beforeAt }: ActivityNetwork,
  list: Int32Array,
  position: Int32Array,
  job: number,
  to: number,
): Int32Array {
  const comes = new Uint8Array(list.length);
  comes[job] = 1;
  for (let k = position[job]!; to <= k; k--) {
    const i = list[k]!;
    if (comes[i] === 0) continue;
    for (let b = beforeAt[i]!; b < beforeAt[i + 1]!; b++) comes[before[b]!] = 1;
  }
  const part = list.subarray(to, position[job]! + 1);
  const next = list.slice();
  next.set(
    [...part].filter((i) => comes[i] === 1),
    to,
  );
  next.set(
    [...part].filter((i) => comes[i] === 0),
    to + part.reduce((sum, i) => sum + comes[i]!, 0),
  );
  return next;
}

/** A job somewhere else between what it waits for and what waits for it. */
function putElsewhere(
  { before, beforeAt, after, afterAt }: ActivityNetwork,
  list: Int32Array,
  position: Int32Array,
  job: number,
  random: Random,
): Int32Array {
  let first = 0;
  let last = list.length - 1;
  for (let b = beforeAt[job]!; b < beforeAt[job + 1]!; b++)
    first = Math.max(first, position[before[b]!]! + 1);
  for (let a = afterAt[job]!; a < afterAt[job + 1]!; a++)
    last = Math.min(last, position[after[a]!]! - 1);
  const at = position[job]!;
  const to = first + drawIndex(random, last - first + 1);
  const next = list.slice();
  if (to < at) next.copyWithin(to + 1, to, at);
  else next.copyWithin(at, at + 1, to + 1);
  next[to] = job;
  return next;
}
