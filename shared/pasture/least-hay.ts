import type { RotationProblem } from './rotation-problem.js';
import { relativePeak } from './sward-bounds.js';

/** Hay no order of stays can avoid, kg: all need less all grass that could stand or grow. */
export function leastHayKg(problem: RotationProblem, from = problem.from): number {
  const { swards, herds, to, harvestShare } = problem;
  let need = 0;
  for (const herd of herds) for (let d = from; d < to; d++) need += herd.demandKg[d]!;
  let grass = 0;
  for (const sward of swards) {
    grass += Math.max(0, sward.startKgPerHa - sward.residualKgPerHa) * sward.areaHa;
    grass += relativePeak(sward, from, to) * sward.areaHa;
  }
  return Math.max(0, need - grass * Math.max(...harvestShare));
}
