import type { Rotation } from '../../shared/pasture/rotation.js';
import type { RotationProblem } from '../../shared/pasture/rotation-problem.js';
import {
  after,
  decisionDay,
  startState,
  staysOf,
  type State,
} from '../../shared/pasture/rotation-state.js';
import { optionsOf } from '../../shared/pasture/stay-options.js';
import { relativePeak } from '../../shared/pasture/sward-bounds.js';

interface ProvenRotation extends Rotation {
  /** False when the search stopped at its limit; the result is then only the best found. */
  readonly isProven: boolean;
  readonly nodes: number;
}

/**
 * The cheapest order of stays by trying all of them, cutting off what cannot win.
 *
 * For a handful of paddocks and a few weeks only: the number of orders doubles every few days.
 *
 * @param limit most part-plans looked at
 */
export function provenRotation(problem: RotationProblem, limit = 2_000_000): ProvenRotation {
  let best: State | undefined;
  let nodes = 0;
  const visit = (state: State): void => {
    if (limit <= nodes) return;
    nodes++;
    if (best && best.costKg <= state.costKg + restBound(problem, state)) return;
    if (problem.to <= decisionDay(state)) {
      best = state;
      return;
    }
    const options = optionsOf(problem, state).sort((a, b) => a.costKg / a.days - b.costKg / b.days);
    for (const option of options) visit(after(problem, state, option));
  };
  visit(startState(problem));
  return {
    stays: staysOf(best!),
    costKg: best!.costKg,
    isProven: nodes < limit,
    nodes,
  };
}

/** Least that the rest of the season can still cost from a state. */
function restBound(problem: RotationProblem, state: State): number {
  const { swards, herds, to, harvestShare } = problem;
  let need = 0;
  herds.forEach((herd, h) => {
    for (let d = state.free[h]!; d < to; d++) need += herd.demandKg[d]!;
  });
  let grass = 0;
  swards.forEach((sward, p) => {
    const from = Math.min(state.massDay[p]!, to);
    grass += Math.max(0, state.mass[p]! - sward.residualKgPerHa) * sward.areaHa;
    grass += relativePeak(sward, from, to) * sward.areaHa;
  });
  return Math.max(0, need - grass * Math.max(...harvestShare));
}
