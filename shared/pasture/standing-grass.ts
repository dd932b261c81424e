import type { RotationProblem } from './rotation-problem.js';
import type { Option, State } from './rotation-state.js';
import { massOn, type Sward } from './sward.js';

/** Standing grass of a state by day and paddock, worked out once for all ways to go on from it. */
export type Standing = Map<number, { readonly total: number; readonly each: Float64Array }>;

/** Grass above the residual, no more than to the rank height, that would stand on a day. */
export function standingKg(
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
  // Filled in place: a search asks for tens of thousands of these.
  const each = new Float64Array(swards.length);
  for (let p = 0; p < swards.length; p++) {
    each[p] = usableKg(swards[p]!, state.mass[p]!, state.massDay[p]!, day);
    total += each[p]!;
  }
  return { total, each };
}

function usableKg(sward: Sward, then: number, from: number, day: number): number {
  const mass = day <= from ? then : massOn(sward, then, from, day);
  return Math.max(0, Math.min(mass, sward.rankKgPerHa) - sward.residualKgPerHa) * sward.areaHa;
}
