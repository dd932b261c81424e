import { tailLengths, turnedRound } from './activity-network.js';
import type { ReadyProject } from './project.js';

/**
 * Periods that no plan of a project can do without: the longest chain, and for every resource
 * the work of activities that all stand at least so far from the start and from the end.
 *
 * Work is demand × duration; spread evenly over the capacity it takes at least work / capacity
 * periods, before which comes the shortest way from the start and after which the shortest to
 * the end. Left out: what two activities that exclude each other add.
 *
 * Source: the critical-path and resource-based bounds LB0 and LB1 of Stinson, Davis and
 * Khumawala, "Multiple resource-constrained scheduling using branch and bound", AIIE
 * Transactions 10 (1978), with heads and tails.
 */
export function projectBound(project: ReadyProject): number {
  const { durations, demands, capacities, network, criticalPath } = project;
  const heads = tailLengths(turnedRound(network), durations).map((way, i) => way - durations[i]!);
  const tails = tailLengths(network, durations).map((way, i) => way - durations[i]!);
  let bound = criticalPath;
  capacities.forEach((capacity, k) => {
    const works = durations.map((duration, i) => duration * demands[i]![k]!);
    const users = works.flatMap((work, i) => (0 < work ? [i] : []));
    const byTail = users.sort((i, j) => tails[j]! - tails[i]!);
    for (const head of new Set(byTail.map((i) => heads[i]!))) {
      let work = 0;
      for (const i of byTail) {
        if (heads[i]! < head) continue;
        work += works[i]!;
        bound = Math.max(bound, head + Math.ceil(work / capacity) + tails[i]!);
      }
    }
  });
  return bound;
}
