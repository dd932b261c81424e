import { massOn } from './sward.js';
import type { RotationProblem, Stay } from './rotation-problem.js';

/**
 * The simple rotation to compare with: each herd goes round its share of the paddocks in list
 * order, the same number of days in each, whatever stands there.
 */
export function fixedRotation(problem: RotationProblem): Stay[] {
  const { swards, herds, from, to } = problem;
  const stays: Stay[] = [];
  herds.forEach((herd, h) => {
    const own = swards.map((_, p) => p).filter((p) => p % herds.length === h);
    let day = Math.max(from, herd.notBefore);
    while (day < to && !own.some((p) => swards[p]!.turnInKgPerHa <= swards[p]!.startKgPerHa)) {
      if (isAnyReady(problem, own, day)) break;
      day++;
    }
    for (let k = 0; day < to && 0 < own.length; k++) {
      const days = Math.min(herd.longestStayDays, to - day);
      stays.push({ herd: h, paddock: own[k % own.length]!, from: day, days });
      day += days;
    }
  });
  return stays;
}

function isAnyReady(
  { swards, from }: RotationProblem,
  own: readonly number[],
  day: number,
): boolean {
  return own.some(
    (p) => swards[p]!.turnInKgPerHa <= massOn(swards[p]!, swards[p]!.startKgPerHa, from, day),
  );
}
