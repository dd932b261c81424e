import type { ActivityNetwork } from './activity-network.js';
import type { Random } from './random.js';
import { WorkDays } from './work-days.js';
import { Heat } from './work-heat.js';
import { signatureOf } from './work-signature.js';
import { workNetwork } from './work-network.js';
import { workWindows } from './work-windows.js';
import { costBound, placeInOrder } from './work-placing.js';
import { drawnRuin, ruinsOf } from './work-ruin.js';
import type { EarlierWork } from './work-settling.js';
import { WorkState } from './work-state.js';
import type { WorkPlacing, WorkProblem } from './work.js';

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
  /**
   * Looks at people's days, at most; the best plan so far is given once they are made. A count, not a
   * clock: the same work gets the same plan on every machine.
   */
  readonly looks?: number;
  /**
   * Plans tried since the last better one, after which the search ends once it is cold. Left out, it
   * goes on.
   */
  readonly quietPlans?: number;
}

/** Costs closer than this are the same. */
const EQUAL = 1e-9;
/** How often jobs are put in again otherwise than on their first days, and at most how much so. */
const VARIED_SHARE = 0.5;
const MOST_VARIED = 0.3;
/** How often of these what others wait for is only begun. */
const BRIEF_SHARE = 0.15;
/** How often of these people's days are shared out among them in pieces shorter than could be. */
const SHARED_SHARE = 0.3;
/** How often of these all who have the time are at a job that one at a time could do. */
const BY_ALL_SHARE = 0.2;

/**
 * Fits jobs into people's hours and days so that what is late or lost costs least.
 *
 * Starts from lists by latest day and by cost, and from the earlier plan as far as it still holds.
 * Then a few related jobs at a time are taken out and put in again one by one, now and then by
 * others or on later days than the first; what comes of it is gone on from when it costs no more,
 * or a little more while the search is warm. With an earlier plan nothing moves that does not save
 * more than moving costs, and what was made for the same problem is the plan already: made again, it
 * stays what it is, piece by piece.
 *
 * Source: ruin and recreate, Schrimpf et al. (2000), cooled as in simulated annealing.
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
  const kept = earlier && keptAsItIs(problem, network, earlier);
  if (kept)
    return {
      plan: kept.pieces,
      cost: kept.costWithoutMoves(),
      bound,
      tried: 0,
    };
  const starts: WorkState[] = [];
  const isOver = (): boolean =>
    (limits.looks ?? Infinity) <= starts.reduce((sum, { days }) => sum + days.looks, 0);
  const latest = workWindows(problem.jobs, network).map(({ latestDay }) => latestDay);
  for (const start of startLists(problem, network, latest, earlier)) {
    if (0 < starts.length && (limits.plans <= starts.length || isOver())) break;
    starts.push(startFrom(problem, network, start, earlier));
  }
  const ruins = ruinsOf(problem, latest, staysIn(starts[0]!));
  const state = starts.reduce((a, b) => (b.total < a.total - EQUAL ? b : a));
  state.settle();
  let best = { pieces: [...state.pieces], total: state.total };
  const heat = new Heat(problem);
  let tried = starts.length;
  let foundAt = tried;
  while (tried < limits.plans && bound + EQUAL < best.total && 1 < ruins.movable.length) {
    if (isOver()) break;
    tried++;
    const isVaried = random() < VARIED_SHARE;
    const vary = isVaried
      ? {
          random,
          share: MOST_VARIED * random(),
          isBrief: random() < BRIEF_SHARE,
          isShared: random() < SHARED_SHARE,
          byAll: random() < BY_ALL_SHARE,
        }
      : undefined;
    const change = state.putAgain(drawnRuin(state, ruins, random), vary);
    const isRoundOver = heat.cool();
    if (change && heat.allows(change.cost, random)) state.keep(change);
    else if (change) state.undo(change);
    if (state.total < best.total - EQUAL) {
      state.settle();
      best = { pieces: [...state.pieces], total: state.total };
      foundAt = tried;
    } else if (isRoundOver) {
      if ((limits.quietPlans ?? Infinity) <= tried - foundAt) break;
      state.goTo(best.pieces);
    }
  }
  state.goTo(best.pieces);
  state.tidy();
  state.leaveMargin();
  return {
    plan: [...state.pieces],
    cost: state.costWithoutMoves(),
    bound,
    tried,
  };
}

/** Whether a job is left where it was: what begins soon, when only what is far has changed. */
function staysIn({ pieces, earlier }: WorkState): (i: number) => boolean {
  const { staysBeforeDay = 0, plan = [] } = earlier ?? {};
  const stays = pieces.map(
    (now, i) => 0 < now.length && now === plan[i] && now[0]!.day < staysBeforeDay,
  );
  return (i) => stays[i]!;
}

/** The earlier plan, where it was made for this problem and all of it stands as it did. */
function keptAsItIs(
  problem: WorkProblem,
  network: ActivityNetwork,
  earlier: EarlierWork,
): WorkState | undefined {
  if (earlier.madeFor === undefined || earlier.madeFor !== signatureOf(problem)) return undefined;
  const nothing = problem.jobs.map(({ pinned }) => pinned ?? []);
  const state = new WorkState(problem, network, nothing, earlier);
  return state.stayWhere(network.order) ? state : undefined;
}

/** A list to start from, and whether what still can stays where it was. */
interface Start {
  readonly list: Int32Array;
  readonly stays: boolean;
}

/** Lists to start from: by the earlier plan, by latest day, by what it costs to be late. */
function startLists(
  { jobs }: WorkProblem,
  network: ActivityNetwork,
  latest: readonly number[],
  earlier: EarlierWork | undefined,
): Start[] {
  const was = earlier?.plan;
  const heaviest = jobs.reduce((most, { lostCost }) => Math.max(most, lostCost), 1);
  const byLatest = (i: number): number => latest[i]!;
  const byCost = (i: number): number => latest[i]! - (30 * jobs[i]!.lostCost) / heaviest;
  const byPlan = (i: number): number => (was?.[i]?.[0] ? was[i][0].day - 1000 : latest[i]!);
  const listBy = (key: (i: number) => number): Int32Array =>
    inOrderOf(
      network,
      Float64Array.from(jobs, (_, i) => key(i)),
    );
  const lists = [byLatest, byCost].map((key) => ({
    list: listBy(key),
    stays: false,
  }));
  if (!was) return lists;
  const stays = { list: listBy(byPlan), stays: true };
  return earlier.staysBeforeDay === undefined ? [stays, ...lists] : [stays];
}

/** The plan of a list; with an earlier plan first all of that which still holds. */
function startFrom(
  problem: WorkProblem,
  network: ActivityNetwork,
  { list, stays }: Start,
  earlier: EarlierWork | undefined,
): WorkState {
  const days = new WorkDays(problem);
  if (!stays) {
    const { pieces } = placeInOrder(problem, days, list, earlier?.plan);
    return new WorkState(problem, network, pieces, earlier);
  }
  const nothing = problem.jobs.map(({ pinned }) => pinned ?? []);
  const state = new WorkState(problem, network, nothing, earlier);
  state.stayWhere(list);
  state.fillUp(list);
  return state;
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
      const one = ready[r]!;
      const other = ready[at]!;
      if (urgent[one]! < urgent[other]! || (urgent[one] === urgent[other] && one < other)) at = r;
    }
    const [i] = ready.splice(at, 1) as [number];
    list[k] = i;
    for (let a = afterAt[i]!; a < afterAt[i + 1]!; a++)
      if (--waiting[after[a]!]! === 0) ready.push(after[a]!);
  }
  return list;
}
