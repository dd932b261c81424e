import type { ActivityNetwork } from './activity-network.js';
import { inOrderOfKeys, type DirectedPlan } from './directed-plan.js';
import { meanShare } from './packed-generation.js';
import type { ReadyProject } from './project.js';
import { drawIndex, type Random } from './random.js';

/** A part handed on is so much of the list, from and to. */
const PART = { least: 0.25, most: 0.75 };
/** So much of the activities, from and to, is not taken for well packed. */
const LOOSE = { least: 0.3, most: 0.7 };
/** A list unlike its parents in fewer places is changed further. */
const LEAST_CHANGED = 15;
const MOST_SHIFTS = 20;
/** Places that one activity is shifted by, at most. */
const REACH = 6;
const SWAPS = 0.03;

/** Makes a list of the lists of two plans that are seen from the same end. */
export class ListMixer {
  private readonly isTaken: Uint8Array;
  private readonly keys: Int32Array;
  private readonly places: Int32Array;
  private readonly share: Float64Array;
  private readonly load: Float64Array;
  private readonly packedness = new WeakMap<DirectedPlan, Float64Array>();

  constructor(
    { durations, demands, capacities }: ReadyProject,
    private readonly random: Random,
  ) {
    const count = durations.length;
    this.isTaken = new Uint8Array(count);
    this.keys = new Int32Array(count);
    this.places = new Int32Array(count);
    this.share = Float64Array.from(demands, (list) => meanShare(list, capacities));
    this.load = new Float64Array(durations.reduce((sum, d) => sum + d, 0) + 1);
    this.durations = Int32Array.from(durations);
  }

  private readonly durations: Int32Array;

  /** A list of both parents' in `child`, a little changed, and unlike either. */
  mix(network: ActivityNetwork, one: DirectedPlan, other: DirectedPlan, child: Int32Array): void {
    if (this.random() < 0.5) this.mixByPlace(one.list, other.list, child);
    else this.mixByPackedness(network, one, other, child);
    this.swapNeighbours(network, child);
    for (let shifts = 0; shifts < MOST_SHIFTS; shifts++) {
      const changed = Math.min(placesApart(child, one.list), placesApart(child, other.list));
      if (LEAST_CHANGED <= changed) break;
      this.shiftOne(network, child);
    }
  }

  /**
   * Two-point crossover: a part in the order of the other parent, what comes before and after
   * in the order of the one.
   *
   * Source: Hartmann, "A competitive genetic algorithm for resource-constrained project
   * scheduling", Naval Research Logistics 45 (1998).
   */
  private mixByPlace(one: Int32Array, other: Int32Array, child: Int32Array): void {
    const { isTaken } = this;
    const count = one.length;
    const part = Math.floor(count * this.between(PART));
    const from = drawIndex(this.random, count - part + 1);
    isTaken.fill(0);
    let k = 0;
    for (; k < from; k++) {
      child[k] = one[k]!;
      isTaken[one[k]!] = 1;
    }
    for (const [list, to] of [[other, from + part] as const, [one, count] as const]) {
      for (let at = 0; k < to; at++) {
        const i = list[at]!;
        if (isTaken[i] === 1) continue;
        isTaken[i] = 1;
        child[k++] = i;
      }
    }
  }

  /**
   * What runs while much of the resources is used keeps its place in the list of the one parent,
   * and the rest stands where the other has it.
   *
   * Source: after the peak crossover of Valls, Ballestín and Quintanilla, "A hybrid genetic
   * algorithm for the resource-constrained project scheduling problem", European Journal of
   * Operational Research 185 (2008), with places instead of peaks.
   */
  private mixByPackedness(
    { before, beforeAt }: ActivityNetwork,
    one: DirectedPlan,
    other: DirectedPlan,
    child: Int32Array,
  ): void {
    const { keys, places } = this;
    const packedness = this.packednessOf(one);
    const count = child.length;
    const sorted = Float64Array.from(packedness).sort();
    const least = sorted[Math.floor(this.between(LOOSE) * (count - 1))]!;
    for (let k = 0; k < count; k++) places[other.list[k]!] = k;
    for (let k = 0; k < count; k++) {
      const i = one.list[k]!;
      let key = least <= packedness[i]! ? k : places[i]!;
      for (let b = beforeAt[i]!; b < beforeAt[i + 1]!; b++) key = Math.max(key, keys[before[b]!]!);
      keys[i] = key;
    }
    inOrderOfKeys(one.list, keys, count, child);
  }

  /** Mean use of all resources while an activity runs; a random one for what takes no time. */
  private packednessOf(plan: DirectedPlan): Float64Array {
    const known = this.packedness.get(plan);
    if (known) return known;
    const { load, share, durations } = this;
    const { starts, length } = plan;
    load.fill(0, 0, length);
    for (let i = 0; i < starts.length; i++)
      for (let t = starts[i]!; t < starts[i]! + durations[i]!; t++) load[t]! += share[i]!;
    const packedness = Float64Array.from(starts, (start, i) => {
      if (durations[i] === 0) return this.random();
      let sum = 0;
      for (let t = start; t < start + durations[i]!; t++) sum += load[t]!;
      return sum / durations[i]!;
    });
    this.packedness.set(plan, packedness);
    return packedness;
  }

  private swapNeighbours(network: ActivityNetwork, list: Int32Array): void {
    for (let k = 0; k + 1 < list.length; k++) {
      if (SWAPS <= this.random()) continue;
      const [i, next] = [list[k]!, list[k + 1]!];
      if (waitsFor(network, next, i)) continue;
      list[k] = next;
      list[k + 1] = i;
    }
  }

  /** One activity anywhere in reach between what it waits for and what waits for it. */
  private shiftOne(network: ActivityNetwork, list: Int32Array): void {
    const at = drawIndex(this.random, list.length);
    const i = list[at]!;
    let first = at;
    let last = at;
    while (0 < first && at - first < REACH && !waitsFor(network, i, list[first - 1]!)) first--;
    while (last < list.length - 1 && last - at < REACH && !waitsFor(network, list[last + 1]!, i))
      last++;
    const to = first + drawIndex(this.random, last - first + 1);
    if (to < at) list.copyWithin(to + 1, to, at);
    else list.copyWithin(at, at + 1, to + 1);
    list[to] = i;
  }

  private between({ least, most }: { least: number; most: number }): number {
    return least + (most - least) * this.random();
  }
}

function waitsFor({ before, beforeAt }: ActivityNetwork, i: number, other: number): boolean {
  for (let b = beforeAt[i]!; b < beforeAt[i + 1]!; b++) if (before[b] === other) return true;
  return false;
}

function placesApart(list: Int32Array, other: Int32Array): number {
  let apart = 0;
  for (let k = 0; k < list.length; k++) if (list[k] !== other[k]) apart++;
  return apart;
}
