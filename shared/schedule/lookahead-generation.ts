import type { ActivityNetwork } from './activity-network.js';
import { FreeCapacity } from './free-capacity.js';
import type { ReadyProject } from './project.js';

/** Activities chosen among: with more, plans get no shorter and take longer to make. */
const CHOICES = 8;

/**
 * The serial schedule generation scheme with a choice: of the next few activities in the list
 * whose predecessors are placed, the one that can start first, where every place further down the
 * list counts as a share of the mean duration later.
 *
 * It stands between the serial and the parallel scheme: a gap is filled by what comes a little
 * later, but not at the cost of the order that the list gives.
 *
 * Source: the serial scheme is of Kolisch, "Serial and parallel resource-constrained project
 * scheduling methods revisited", European Journal of Operational Research 90 (1996). That the best
 * plans lie between the two is after the parameterized active schedules of Gonçalves, Mendes and
 * Resende, "A hybrid genetic algorithm for the job shop scheduling problem", European Journal of
 * Operational Research 167 (2005). The rule of choice is our own; the bench measures it.
 */
export class LookaheadGeneration {
  private readonly free: FreeCapacity;
  private readonly demand: Int32Array;
  private readonly durations: Int32Array;
  private readonly meanDuration: number;
  /** Predecessors of each activity that are not placed. */
  private readonly waiting: Int32Array;
  /** No activity can start before, as far as is known. */
  private readonly earliest: Int32Array;
  /** Activities that are not placed, in the order of the list. */
  private readonly left: Int32Array;
  /** Passes over all activities so far. */
  passes = 0;

  constructor({ durations, demands, capacities }: ReadyProject) {
    const count = durations.length;
    const work = durations.reduce((sum, d) => sum + d, 0);
    this.meanDuration = work / Math.max(1, count);
    this.free = new FreeCapacity(capacities, work + 1);
    this.demand = this.free.packedAll(demands);
    this.durations = Int32Array.from(durations);
    this.waiting = new Int32Array(count);
    this.earliest = new Int32Array(count);
    this.left = new Int32Array(count);
  }

  /**
   * Starts of all activities, and the end of the last.
   *
   * @param network  as it is, or turned round for a plan counted from the end
   * @param cost     mean durations that a place further down the list counts as, 0 or more: with
   *                 0 the earliest of the next few goes first, with many it is the serial scheme
   */
  run(network: ActivityNetwork, list: Int32Array, cost: number, starts: Int32Array): number {
    const { free, demand, durations, left } = this;
    this.prepare(network, list);
    let end = 0;
    for (let leftCount = list.length; 0 < leftCount; leftCount--) {
      const at = this.choose(leftCount, cost * this.meanDuration);
      const i = left[at]!;
      left.copyWithin(at, at + 1, leftCount);
      const start = this.earliest[i]!;
      const over = start + durations[i]!;
      free.take(demand, i * free.words, start, durations[i]!);
      starts[i] = start;
      this.release(network, i, over);
      if (end < over) end = over;
    }
    this.passes++;
    return end;
  }

  private prepare({ beforeAt }: ActivityNetwork, list: Int32Array): void {
    this.free.reset();
    this.earliest.fill(0);
    this.left.set(list);
    for (let i = 0; i < list.length; i++) this.waiting[i] = beforeAt[i + 1]! - beforeAt[i]!;
  }

  /** Where the activity to be placed next stands among those left; `earliest` is its start. */
  private choose(leftCount: number, periodsPerPlace: number): number {
    const { free, demand, durations, waiting, earliest, left } = this;
    let best = Infinity;
    let bestAt = 0;
    for (let at = 0, choices = 0; at < leftCount && choices < CHOICES; at++) {
      const i = left[at]!;
      if (waiting[i] !== 0) continue;
      choices++;
      // What is free only gets less, so that a start found before is not looked for again.
      if (best <= earliest[i]! + periodsPerPlace * at) continue;
      if (0 < durations[i]!)
        earliest[i] = free.firstFit(demand, i * free.words, earliest[i]!, durations[i]!);
      const key = earliest[i]! + periodsPerPlace * at;
      if (best <= key) continue;
      best = key;
      bestAt = at;
    }
    return bestAt;
  }

  private release({ after, afterAt }: ActivityNetwork, i: number, over: number): void {
    for (let a = afterAt[i]!; a < afterAt[i + 1]!; a++) {
      const next = after[a]!;
      this.waiting[next]!--;
      if (this.earliest[next]! < over) this.earliest[next] = over;
    }
  }
}
