import { grazeDay, massOn, type Sward } from './sward.js';

/** Herds as the search sees them: what they would eat of grass on each day. */
export interface Grazers {
  readonly demandKg: Float64Array;
  readonly longestStayDays: number;
  /** First day they may be on grass. */
  readonly notBefore: number;
  /** Paddock they stand in at the start and since which day (negative), or undefined. */
  readonly startsIn?: { readonly paddock: number; readonly since: number };
}

export interface RotationProblem {
  readonly swards: readonly Sward[];
  readonly herds: readonly Grazers[];
  /** First day of the plan and the day after its last. */
  readonly from: number;
  readonly to: number;
  /** Share eaten of what disappears, by days of stay, and how much less in rank grass. */
  readonly harvestShare: readonly number[];
  readonly rankDrop: number;
}

/** A herd in a paddock from a day on, for some days. */
export interface Stay {
  readonly herd: number;
  readonly paddock: number;
  readonly from: number;
  readonly days: number;
}

export interface Rotation {
  readonly stays: readonly Stay[];
  readonly costKg: number;
}

/**
 * What an order of stays costs, in kilograms of dry matter: hay for what the grass does not give,
 * and three judgements that keep the sward right.
 */
export const COST = {
  /** For each kg eaten from a paddock entered below its turn-in height. */
  early: 0.3,
  /** For each kg eaten at full height before the rest is over, times the share of rest missed. */
  shortRest: 0.5,
  /** For each kg that stood above the rank height on entry. */
  rank: 0.1,
  /** For each kg of hay once the herd has been on grass: better to have waited. */
  backOnHay: 0.2,
  /** For each move: fence and a walk. */
  moveKg: 2,
} as const;

/** Share of the turn-in height, above the residual, below which a paddock is never entered. */
const EARLIEST_SHARE = 0.65;
/** A paddock is never entered again before this share of its rest. */
const LEAST_REST_SHARE = 0.2;
/** A stay ends when the grass gives less than this share of a day's need. */
const LEAST_DAY_SHARE = 0.8;
/**
 * What a kilogram of standing grass counts for while orders are compared on the way. It is worth
 * nearly its share eaten when grass is short and next to nothing in a flush, so each is tried.
 */
const STANDING_WORTHS = [0.05, 0.4, 0.75] as const;

/** Where everything stands when the next herd has to be moved. */
export interface State {
  /** Day on which each herd must be moved next. */
  readonly free: readonly number[];
  /** Paddock of each herd until then, -1 when it is on hay. */
  readonly at: readonly number[];
  /** Whether each herd has been on grass in this plan. */
  readonly isOut: readonly boolean[];
  readonly mass: Float64Array;
  /** Day to which each mass belongs. */
  readonly massDay: Int16Array;
  readonly lastEnd: Int16Array;
  readonly costKg: number;
  readonly stay?: Stay;
  readonly before?: State;
}

/** One way to go on: a stay, or a day on hay when no paddock is ready. */
export interface Option {
  readonly herd: number;
  readonly paddock: number;
  readonly from: number;
  readonly days: number;
  readonly massAfter: number;
  readonly costKg: number;
}

const NEVER = -32_000;

export function startState(problem: RotationProblem): State {
  const { swards, herds, from } = problem;
  const mass = Float64Array.from(swards, (s) => s.startKgPerHa);
  return {
    free: herds.map((herd) => nextNeed(herd, from, problem.to)),
    at: herds.map(() => -1),
    isOut: herds.map((herd) => herd.startsIn !== undefined),
    mass,
    massDay: new Int16Array(swards.length).fill(from),
    lastEnd: Int16Array.from(swards, (s) => s.lastGrazedEnd ?? NEVER),
    costKg: 0,
  };
}

/** First day from which the herd eats grass, or the end. */
function nextNeed(herd: Grazers, from: number, to: number): number {
  let day = from;
  while (day < to && herd.demandKg[day]! <= 0) day++;
  return day;
}

export const decisionDay = (state: State): number => Math.min(...state.free);

interface Enterable {
  readonly paddock: number;
  readonly mass: number;
  /** Share of the rest asked for that is missed, 0 when it is over. */
  readonly restMissed: number;
  /** How far above the residual, in turn-in heights: 1 is just ready. */
  readonly ripeness: number;
}

/**
 * Every stay the next herd could make now; a day on hay when it could make none at full height.
 *
 * @param most paddocks looked at, the ripest first; all of them for a proof
 */
export function optionsOf(
  problem: RotationProblem,
  state: State,
  most = problem.swards.length,
): Option[] {
  const day = decisionDay(state);
  const herd = state.free.indexOf(day);
  const grazers = problem.herds[herd]!;
  const options: Option[] = [];
  let hasReady = false;
  if (grazers.notBefore <= day) {
    const found: Enterable[] = [];
    for (let p = 0; p < problem.swards.length; p++) {
      if (isTaken(state, herd, p, day)) continue;
      const sward = problem.swards[p]!;
      const rest = restShare(sward, state.lastEnd[p]!, day, grazers, p);
      if (rest < LEAST_REST_SHARE) continue;
      const mass = massOn(sward, state.mass[p]!, state.massDay[p]!, day);
      // A lightly grazed stand can be back at its height before the rest of the month is over.
      const restMissed = Math.max(0, 1 - rest);
      if (0 < restMissed && mass < sward.turnInKgPerHa) continue;
      // Turn-out waits for the full height; later a herd may come a little early.
      const share = state.isOut[herd] ? EARLIEST_SHARE : 1;
      const earliest =
        sward.residualKgPerHa + share * (sward.turnInKgPerHa - sward.residualKgPerHa);
      if (mass < earliest) continue;
      const ripeness =
        (mass - sward.residualKgPerHa) / (sward.turnInKgPerHa - sward.residualKgPerHa);
      found.push({ paddock: p, mass, restMissed, ripeness });
    }
    if (most < found.length) found.sort((a, b) => b.ripeness - a.ripeness);
    for (const { paddock, mass, restMissed, ripeness } of found.slice(0, most)) {
      const stays = staysIn(problem, { herd, paddock, day, mass, restMissed });
      if (0 < stays.length && 1 <= ripeness && restMissed === 0) hasReady = true;
      options.push(...stays);
    }
  }
  if (!hasReady) {
    const demand = grazers.demandKg[day]!;
    const costKg = demand * (state.isOut[herd] ? 1 + COST.backOnHay : 1);
    options.push({ herd, paddock: -1, from: day, days: 1, massAfter: 0, costKg });
  }
  return options;
}

function isTaken(state: State, herd: number, paddock: number, day: number): boolean {
  return state.at.some((at, other) => other !== herd && at === paddock && day < state.free[other]!);
}

/** Days rested over the days asked for. */
function restShare(
  sward: Sward,
  lastEnd: number,
  day: number,
  herd: Grazers,
  paddock: number,
): number {
  if (lastEnd === NEVER) return 1;
  // A herd that stands in a paddock on the first day may finish its stay there.
  if (herd.startsIn?.paddock === paddock && lastEnd === day) return 1;
  return (day - lastEnd) / Math.max(1, sward.minRestDays[day]!);
}

function staysIn(
  problem: RotationProblem,
  at: { herd: number; paddock: number; day: number; mass: number; restMissed: number },
): Option[] {
  const { swards, herds, to, harvestShare, rankDrop } = problem;
  const sward = swards[at.paddock]!;
  const herd = herds[at.herd]!;
  const isRank = sward.rankKgPerHa < at.mass;
  const started = herd.startsIn?.paddock === at.paddock && at.day === problem.from;
  const longest = Math.max(
    1,
    herd.longestStayDays - (started ? problem.from - herd.startsIn!.since : 0),
  );
  const options: Option[] = [];
  for (let days = 1; days <= longest && at.day + days <= to; days++) {
    const last = at.day + days - 1;
    if (sward.isClosed[last] !== 0 || herd.demandKg[last]! <= 0) break;
    const share = harvestShare[Math.min(days, harvestShare.length) - 1]! - (isRank ? rankDrop : 0);
    const run = grazeStay(sward, herd, at.mass, at.day, days, share);
    if (!run.lasts) break;
    const earlyKg = at.mass < sward.turnInKgPerHa ? COST.early * run.eatenKg : 0;
    const shortKg = COST.shortRest * at.restMissed * run.eatenKg;
    const rankKg = isRank ? COST.rank * (at.mass - sward.rankKgPerHa) * sward.areaHa : 0;
    options.push({
      herd: at.herd,
      paddock: at.paddock,
      from: at.day,
      days,
      massAfter: run.massAfter,
      costKg: run.hayKg + earlyKg + shortKg + rankKg + COST.moveKg,
    });
  }
  return options;
}

function grazeStay(
  sward: Sward,
  herd: Grazers,
  massBefore: number,
  day: number,
  days: number,
  share: number,
): { massAfter: number; hayKg: number; eatenKg: number; lasts: boolean } {
  let mass = massBefore;
  let hayKg = 0;
  let eatenKg = 0;
  for (let i = day; i < day + days; i++) {
    const demand = herd.demandKg[i]!;
    const grown = massOn(sward, mass, i, i + 1);
    const grazed = grazeDay(grown, sward.residualKgPerHa, demand / sward.areaHa, share);
    const eaten = grazed.eatenKgPerHa * sward.areaHa;
    mass = grazed.massKgPerHa;
    eatenKg += eaten;
    hayKg += demand - eaten;
    if (eaten < LEAST_DAY_SHARE * demand) return { massAfter: mass, hayKg, eatenKg, lasts: false };
  }
  return { massAfter: mass, hayKg, eatenKg, lasts: true };
}

/** The state after an option. */
export function after(problem: RotationProblem, state: State, option: Option): State {
  const { herd, paddock, from, days } = option;
  const end = from + days;
  const free = [...state.free];
  free[herd] = nextNeed(problem.herds[herd]!, end, problem.to);
  const at = [...state.at];
  at[herd] = paddock;
  const costKg = state.costKg + option.costKg;
  if (paddock < 0) {
    const { mass, massDay, lastEnd, isOut } = state;
    return { free, at, isOut, mass, massDay, lastEnd, costKg, before: state };
  }
  const mass = Float64Array.from(state.mass);
  const massDay = Int16Array.from(state.massDay);
  const lastEnd = Int16Array.from(state.lastEnd);
  mass[paddock] = option.massAfter;
  massDay[paddock] = end;
  lastEnd[paddock] = end;
  const stay = { herd, paddock, from, days };
  const isOut = state.isOut[herd] ? state.isOut : state.isOut.map((out, h) => out || h === herd);
  return { free, at, isOut, mass, massDay, lastEnd, costKg, stay, before: state };
}

/** Stays of a finished state, in order. */
export function staysOf(state: State): Stay[] {
  const stays: Stay[] = [];
  for (let s: State | undefined = state; s; s = s.before) if (s.stay) stays.push(s.stay);
  return stays.reverse();
}

/** Paddocks that are looked at for each move of a search. */
const MOST_PADDOCKS = 6;

interface Candidate {
  readonly state: State;
  readonly option: Option;
  readonly score: number;
}

/** Width at which a search takes about a third of a second, at most 512. */
export function widthFor(problem: RotationProblem): number {
  return Math.min(512, Math.max(4, Math.round(80_000 / sizeOf(problem))));
}

const sizeOf = ({ swards, herds, from, to }: RotationProblem): number =>
  Math.max(1, swards.length * herds.length * (to - from));

/**
 * The order of stays with the least cost that a search of a given width finds.
 *
 * The best `width` part-plans are kept for every day on which a herd has to move; part-plans are
 * compared by their cost less what their standing grass is worth. The cost of the search grows
 * with width × moves × paddocks. On small cases every move of the best order is then changed in
 * turn, and the rest found anew.
 */
export function chooseRotation(problem: RotationProblem, width = widthFor(problem)): Rotation {
  const start = startState(problem);
  let best = cheapest(STANDING_WORTHS.map((worth) => search(problem, start, width, worth)));
  if (sizeOf(problem) <= MOST_IMPROVED) best = improved(problem, best);
  return { stays: staysOf(best), costKg: best.costKg };
}

/** A quick order of stays for comparing ways out: one narrow search. */
export function quickRotation(problem: RotationProblem): Rotation {
  const state = search(problem, startState(problem), QUICK_WIDTH, STANDING_WORTHS[1]);
  return { stays: staysOf(state), costKg: state.costKg };
}
const QUICK_WIDTH = 2;

const cheapest = (states: readonly State[]): State =>
  states.reduce((best, each) => (each.costKg < best.costKg ? each : best));

/** Paddocks × herds × days up to which each move is tried anew. */
const MOST_IMPROVED = 250;
const IMPROVING_WIDTH = 4;

/** Changes one move at a time and finds the rest anew, as long as that saves anything. */
function improved(problem: RotationProblem, found: State): State {
  let best = found;
  for (let step = 0; step < pathTo(best).length; step++) {
    const state = pathTo(best)[step]!;
    if (problem.to <= decisionDay(state)) break;
    const tried = optionsOf(problem, state, MOST_PADDOCKS).flatMap((option) => {
      const next = after(problem, state, option);
      return STANDING_WORTHS.map((worth) => search(problem, next, IMPROVING_WIDTH, worth));
    });
    best = cheapest([best, ...tried]);
  }
  return best;
}

/** States on the way to a state, the first day first. */
function pathTo(end: State): State[] {
  const path: State[] = [];
  for (let s: State | undefined = end; s; s = s.before) path.push(s);
  return path.reverse();
}

function search(problem: RotationProblem, start: State, width: number, worth: number): State {
  const buckets = new Map<number, Candidate[]>();
  let best: State | undefined;
  const expand = (state: State): void => {
    if (problem.to <= decisionDay(state)) {
      if (!best || state.costKg < best.costKg) best = state;
      return;
    }
    const weigh = { worth, standing: new Map() as Standing };
    for (const option of optionsOf(problem, state, MOST_PADDOCKS))
      push(buckets, problem, state, option, weigh);
  };
  expand(start);
  for (let day = problem.from; day <= problem.to; day++) {
    // With several herds a day is gone through once for each that moves on it.
    for (let bucket = buckets.get(day); bucket; bucket = buckets.get(day)) {
      buckets.delete(day);
      bucket.sort((a, b) => a.score - b.score);
      for (const { state, option } of bucket.slice(0, width)) {
        expand(after(problem, state, option));
      }
    }
  }
  return best!;
}

function push(
  buckets: Map<number, Candidate[]>,
  problem: RotationProblem,
  state: State,
  option: Option,
  weigh: { worth: number; standing: Standing },
): void {
  const end = nextNeed(problem.herds[option.herd]!, option.from + option.days, problem.to);
  let day = end;
  state.free.forEach((free, herd) => {
    if (herd !== option.herd && free < day) day = free;
  });
  const cost = state.costKg + option.costKg;
  const score = cost - weigh.worth * standingKg(problem, state, option, day, weigh.standing);
  const bucket = buckets.get(day);
  if (bucket) bucket.push({ state, option, score });
  else buckets.set(day, [{ state, option, score }]);
}

/** Standing grass of a state by day and paddock, worked out once for all ways to go on from it. */
type Standing = Map<number, { readonly total: number; readonly each: Float64Array }>;

/** Grass above the residual, no more than to the rank height, that would stand on a day. */
function standingKg(
  problem: RotationProblem,
  state: State,
  option: Option,
  day: number,
  known: Standing,
): number {
  let then = known.get(day);
  if (!then) known.set(day, (then = standingOn(problem, state, day)));
  if (option.paddock < 0) return then.total;
  const p = option.paddock;
  const own = usableKg(problem.swards[p]!, option.massAfter, option.from + option.days, day);
  return then.total - then.each[p]! + own;
}

function standingOn(
  { swards }: RotationProblem,
  state: State,
  day: number,
): { total: number; each: Float64Array } {
  let total = 0;
  const each = Float64Array.from(swards, (sward, p) => {
    const kg = usableKg(sward, state.mass[p]!, state.massDay[p]!, day);
    total += kg;
    return kg;
  });
  return { total, each };
}

function usableKg(sward: Sward, then: number, from: number, day: number): number {
  const mass = day <= from ? then : massOn(sward, then, from, day);
  return Math.max(0, Math.min(mass, sward.rankKgPerHa) - sward.residualKgPerHa) * sward.areaHa;
}
