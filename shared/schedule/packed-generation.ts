import type { ActivityNetwork } from './activity-network.js';
import { FreeCapacity } from './free-capacity.js';
import type { ReadyProject } from './project.js';

/** Only what is free now matters, because nothing is placed ahead of time. */
const NOW = 0;

/** Sets of activities looked at in one period, beyond the first. */
const LOOKS = 300;
/** What holds nothing is worth something too, and what stands far down the list. */
const LEAST_SHARE = 0.01;
const LEAST_WEIGHT = 1e-9;

/**
 * The parallel schedule generation scheme, which goes through time and starts what fits, choosing
 * like one who packs a box: of all sets that fit now, the one that is worth most.
 *
 * An activity is worth the mean share of the resources that it holds, times a weight that falls
 * with its place in the list. Where resources are scarce and few activities wait for each other,
 * plans packed so are much shorter than those of a list alone. Only a few hundred sets are looked
 * at, the most promising first.
 *
 * Source: the scheme is of Kolisch, "Serial and parallel resource-constrained project scheduling
 * methods revisited", European Journal of Operational Research 90 (1996); the choice is after the
 * minimum bin slack of Gupta and Ho, "A new heuristic algorithm for the one-dimensional
 * bin-packing problem", Production Planning and Control 10 (1999).
 */
export class PackedGeneration {
  private readonly now: FreeCapacity;
  private readonly demand: Int32Array;
  private readonly durations: Int32Array;
  private readonly share: Float64Array;
  private readonly worth: Float64Array;
  private readonly waiting: Int32Array;
  /** Activities not started: in no order. */
  private readonly left: Int32Array;
  private readonly running: Int32Array;
  /** Activities that could start now, the one of most worth first. */
  private readonly eligible: Int32Array;
  private readonly tried: Int32Array;
  private readonly chosen: Int32Array;
  private leftCount = 0;
  private runningCount = 0;
  private eligibleCount = 0;
  private chosenCount = 0;
  private chosenWorth = 0;
  private looks = 0;
  /** Passes over all activities so far. */
  passes = 0;

  constructor({ durations, demands, capacities }: ReadyProject) {
    const count = durations.length;
    this.now = new FreeCapacity(capacities, 1);
    this.durations = Int32Array.from(durations);
    this.demand = this.now.packedAll(demands);
    this.share = Float64Array.from(demands, (list) => meanShare(list, capacities));
    this.worth = new Float64Array(count);
    this.waiting = new Int32Array(count);
    this.left = new Int32Array(count);
    this.running = new Int32Array(count);
    this.eligible = new Int32Array(count);
    this.tried = new Int32Array(count);
    this.chosen = new Int32Array(count);
  }

  /**
   * Starts of all activities, and the end of the last.
   *
   * @param network  as it is, or turned round for a plan counted from the end
   * @param fade     places of the list over which the weight falls by a factor of e, above 0:
   *                 with few the list counts, with many how much an activity holds
   */
  run(network: ActivityNetwork, list: Int32Array, fade: number, starts: Int32Array): number {
    this.prepare(network, list, fade);
    let time = 0;
    let end = 0;
    for (;;) {
      this.startWhatTakesNoTime(network, time, starts);
      if (this.leftCount === 0) break;
      this.listEligible();
      this.chosenCount = 0;
      this.chosenWorth = 0;
      this.looks = 0;
      this.choose(0, 0, 0);
      end = Math.max(end, this.startChosen(time, starts));
      time = this.nextEnd(starts);
      this.finish(network, time, starts);
    }
    this.passes++;
    return end;
  }

  private prepare({ beforeAt }: ActivityNetwork, list: Int32Array, fade: number): void {
    this.now.reset();
    this.left.set(list);
    this.leftCount = list.length;
    this.runningCount = 0;
    for (let k = 0; k < list.length; k++) {
      const i = list[k]!;
      this.waiting[i] = beforeAt[i + 1]! - beforeAt[i]!;
      const weight = Math.max(LEAST_WEIGHT, Math.exp(-k / fade));
      this.worth[i] = (this.share[i]! + LEAST_SHARE) * weight;
    }
  }

  private startWhatTakesNoTime(network: ActivityNetwork, time: number, starts: Int32Array): void {
    for (let k = 0; k < this.leftCount; k++) {
      const i = this.left[k]!;
      if (this.durations[i] !== 0 || this.waiting[i] !== 0) continue;
      starts[i] = time;
      this.left[k] = this.left[--this.leftCount]!;
      this.release(network, i);
      // What stood before may have waited for this one.
      k = -1;
    }
  }

  private listEligible(): void {
    const { words } = this.now;
    let count = 0;
    for (let k = 0; k < this.leftCount; k++) {
      const i = this.left[k]!;
      if (this.waiting[i] !== 0 || !this.now.fits(this.demand, i * words, NOW)) continue;
      let at = count++;
      for (; 0 < at && this.worth[this.eligible[at - 1]!]! < this.worth[i]!; at--)
        this.eligible[at] = this.eligible[at - 1]!;
      this.eligible[at] = i;
    }
    this.eligibleCount = count;
  }

  /** Tries all sets that add to those tried so far, and keeps the one that is worth most. */
  private choose(from: number, triedCount: number, worth: number): void {
    if (this.chosenWorth < worth) {
      this.chosenWorth = worth;
      this.chosenCount = triedCount;
      for (let k = 0; k < triedCount; k++) this.chosen[k] = this.tried[k]!;
    }
    const { now, demand } = this;
    for (let k = from; k < this.eligibleCount; k++) {
      const i = this.eligible[k]!;
      const at = i * now.words;
      if (!now.fits(demand, at, NOW)) continue;
      // The first set is always completed, so that nothing that fits is left out of it.
      if (LOOKS + this.eligibleCount < this.looks++) return;
      now.take(demand, at, NOW, 1);
      this.tried[triedCount] = i;
      this.choose(k + 1, triedCount + 1, worth + this.worth[i]!);
      now.giveBack(demand, at, NOW);
    }
  }

  /** Starts the set that was chosen; says when the last of it ends. */
  private startChosen(time: number, starts: Int32Array): number {
    let end = time;
    for (let k = 0; k < this.chosenCount; k++) {
      const i = this.chosen[k]!;
      starts[i] = time;
      end = Math.max(end, time + this.durations[i]!);
      this.now.take(this.demand, i * this.now.words, NOW, 1);
      this.running[this.runningCount++] = i;
      this.waiting[i] = STARTED;
    }
    let kept = 0;
    for (let k = 0; k < this.leftCount; k++) {
      const i = this.left[k]!;
      if (this.waiting[i] !== STARTED) this.left[kept++] = i;
    }
    this.leftCount = kept;
    return end;
  }

  private nextEnd(starts: Int32Array): number {
    let next = Infinity;
    for (let k = 0; k < this.runningCount; k++) {
      const i = this.running[k]!;
      next = Math.min(next, starts[i]! + this.durations[i]!);
    }
    return next;
  }

  private finish(network: ActivityNetwork, time: number, starts: Int32Array): void {
    let kept = 0;
    for (let k = 0; k < this.runningCount; k++) {
      const i = this.running[k]!;
      if (time < starts[i]! + this.durations[i]!) {
        this.running[kept++] = i;
      } else {
        this.now.giveBack(this.demand, i * this.now.words, NOW);
        this.release(network, i);
      }
    }
    this.runningCount = kept;
  }

  private release({ after, afterAt }: ActivityNetwork, i: number): void {
    for (let a = afterAt[i]!; a < afterAt[i + 1]!; a++) this.waiting[after[a]!]!--;
  }
}

const STARTED = -1;

/** Mean over the resources of the share of each that is held; 0 where there are no resources. */
export function meanShare(demands: readonly number[], capacities: readonly number[]): number {
  const shares = capacities.map((capacity, k) => (0 < capacity ? demands[k]! / capacity : 0));
  return shares.reduce((sum, share) => sum + share, 0) / Math.max(1, shares.length);
}
