import type { ActivityNetwork } from './activity-network.js';
import { FreeCapacity } from './free-capacity.js';
import type { ReadyProject } from './project.js';

/** Only what is free now matters, because nothing is placed ahead of time. */
const NOW = 0;

/**
 * The parallel schedule generation scheme, which goes through time and starts whatever fits,
 * choosing like one who packs a box: what comes early in the list, and what holds much.
 *
 * Where resources are scarce and few activities wait for each other, plans packed so are much
 * shorter than those of a list alone.
 *
 * Source: the scheme is of Kolisch, "Serial and parallel resource-constrained project scheduling
 * methods revisited", European Journal of Operational Research 90 (1996); best fit is as in bin
 * packing with vectors.
 */
export class PackedGeneration {
  private readonly now: FreeCapacity;
  private readonly demand: Int32Array;
  private readonly durations: Int32Array;
  /** Mean over the resources of the share that an activity holds, 0 to 1. */
  private readonly share: Float64Array;
  private readonly waiting: Int32Array;
  private readonly left: Int32Array;
  private readonly score: Float64Array;
  private readonly running: Int32Array;
  /** Passes over all activities so far. */
  passes = 0;

  constructor({ durations, demands, capacities }: ReadyProject) {
    const count = durations.length;
    this.now = new FreeCapacity(capacities, 1);
    this.durations = Int32Array.from(durations);
    const { words } = this.now;
    this.demand = new Int32Array(count * words);
    demands.forEach((list, i) => this.demand.set(this.now.packed(list), i * words));
    this.share = Float64Array.from(demands, (list) => meanShare(list, capacities));
    this.waiting = new Int32Array(count);
    this.left = new Int32Array(count);
    this.score = new Float64Array(count);
    this.running = new Int32Array(count);
  }

  /**
   * Starts of all activities, and the end of the last.
   *
   * @param network  as it is, or turned round for a plan counted from the end
   * @param places   places in the list that an activity gains when it holds all of every
   *                 resource, 0 (the list alone) or more
   */
  run(network: ActivityNetwork, list: Int32Array, places: number, starts: Int32Array): number {
    this.prepare(network, list, places);
    const { durations } = this;
    let [left, running, time, end] = [list.length, 0, 0, 0];
    for (;;) {
      for (let k = this.bestOf(left); k !== NONE; k = this.bestOf(left)) {
        const i = this.left[k]!;
        this.left[k] = this.left[--left]!;
        starts[i] = time;
        end = Math.max(end, time + durations[i]!);
        if (durations[i] === 0) {
          this.release(network, i);
        } else {
          this.now.take(this.demand, i * this.now.words, NOW, 1);
          this.running[running++] = i;
        }
      }
      if (left === 0) break;
      time = this.nextEnd(running, starts);
      running = this.finish(network, running, time, starts);
    }
    this.passes++;
    return end;
  }

  private prepare({ beforeAt }: ActivityNetwork, list: Int32Array, places: number): void {
    this.now.reset();
    this.left.set(list);
    for (let k = 0; k < list.length; k++) {
      const i = list[k]!;
      this.waiting[i] = beforeAt[i + 1]! - beforeAt[i]!;
      // What takes no time holds nothing and may let others start at once.
      this.score[i] = this.durations[i] === 0 ? Infinity : places * this.share[i]! - k;
    }
  }

  /** Where the best that can start now stands among those left. */
  private bestOf(left: number): number {
    const { words } = this.now;
    let best = NONE;
    let bestScore = -Infinity;
    for (let k = 0; k < left; k++) {
      const i = this.left[k]!;
      if (this.waiting[i] !== 0 || this.score[i]! <= bestScore) continue;
      if (this.durations[i] !== 0 && !this.now.fits(this.demand, i * words, NOW)) continue;
      best = k;
      bestScore = this.score[i]!;
    }
    return best;
  }

  private nextEnd(running: number, starts: Int32Array): number {
    let next = Infinity;
    for (let k = 0; k < running; k++) {
      const i = this.running[k]!;
      next = Math.min(next, starts[i]! + this.durations[i]!);
    }
    return next;
  }

  /** Takes what is over from those that run; says how many still do. */
  private finish(
    network: ActivityNetwork,
    running: number,
    time: number,
    starts: Int32Array,
  ): number {
    let kept = 0;
    for (let k = 0; k < running; k++) {
      const i = this.running[k]!;
      if (time < starts[i]! + this.durations[i]!) {
        this.running[kept++] = i;
      } else {
        this.now.giveBack(this.demand, i * this.now.words, NOW);
        this.release(network, i);
      }
    }
    return kept;
  }

  private release({ after, afterAt }: ActivityNetwork, i: number): void {
    for (let a = afterAt[i]!; a < afterAt[i + 1]!; a++) this.waiting[after[a]!]!--;
  }
}

const NONE = -1;

/** Mean over the resources of the share of each that is held; 0 where there are no resources. */
export function meanShare(demands: readonly number[], capacities: readonly number[]): number {
  const shares = capacities.map((capacity, k) => (0 < capacity ? demands[k]! / capacity : 0));
  return shares.reduce((sum, share) => sum + share, 0) / Math.max(1, shares.length);
}
