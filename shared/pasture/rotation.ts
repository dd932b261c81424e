import type { RotationProblem, Stay } from './rotation-problem.js';
import {
  after,
  decisionDay,
  nextNeed,
  startState,
  staysOf,
  type Option,
  type State,
} from './rotation-state.js';
import { standingKg, type Standing } from './standing-grass.js';
import { optionsOf } from './stay-options.js';

export interface Rotation {
  readonly stays: readonly Stay[];
  readonly costKg: number;
}

/**
 * What a kilogram of standing grass counts for while orders are compared on the way. It is worth
 * nearly its share eaten when grass is short and next to nothing in a flush, so each is tried.
 */
const STANDING_WORTHS = [0.05, 0.4, 0.75] as const;

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
