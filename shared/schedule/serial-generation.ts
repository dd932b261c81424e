import type { ActivityNetwork } from './activity-network.js';
import { FreeCapacity } from './free-capacity.js';
import type { ReadyProject } from './project.js';

/**
 * The serial schedule generation scheme: activities in the order of a list, each at the first
 * time at which what it waits for is over and its resources are free.
 *
 * Source: Kolisch, "Serial and parallel resource-constrained project scheduling methods
 * revisited", European Journal of Operational Research 90 (1996).
 */
export class SerialGeneration {
  private readonly free: FreeCapacity;
  private readonly demand: Int32Array;
  private readonly durations: Int32Array;
  /** Passes over all activities so far. */
  passes = 0;

  constructor({ durations, demands, capacities }: ReadyProject) {
    const periods = durations.reduce((sum, d) => sum + d, 0) + 1;
    this.free = new FreeCapacity(capacities, periods);
    this.durations = Int32Array.from(durations);
    this.demand = this.free.packedAll(demands);
  }

  /**
   * Starts of all activities, and the end of the last.
   *
   * @param network  as it is; turned round, everything is done as late as can be: `list` names last
   *                 things first, and starts are counted back from the end of the project
   */
  run(network: ActivityNetwork, list: Int32Array, starts: Int32Array): number {
    const { free, demand, durations } = this;
    const { before, beforeAt } = network;
    const { words } = free;
    free.reset();
    let end = 0;
    for (let k = 0; k < list.length; k++) {
      const i = list[k]!;
      const length = durations[i]!;
      let from = 0;
      for (let b = beforeAt[i]!; b < beforeAt[i + 1]!; b++) {
        const j = before[b]!;
        const over = starts[j]! + durations[j]!;
        if (from < over) from = over;
      }
      if (0 < length) {
        from = free.firstFit(demand, i * words, from, length);
        free.take(demand, i * words, from, length);
      }
      starts[i] = from;
      if (end < from + length) end = from + length;
    }
    this.passes++;
    return end;
  }
}
