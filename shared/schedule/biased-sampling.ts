import type { ActivityNetwork } from './activity-network.js';
import type { Random } from './random.js';

/**
 * A random list in which no activity stands before one that it waits for, and what has the
 * longest way to the end tends to come early: each place is drawn among those that may stand
 * there, with weight 1 / (1 + how much shorter the way is than the longest).
 *
 * Source: regret-based biased random sampling by latest finish, Kolisch and Drexl, "Adaptive
 * search for solving hard project scheduling problems", Naval Research Logistics 43 (1996).
 *
 * @param ways  longest way from the start of each activity to the end, periods
 */
export function sampledList(
  network: ActivityNetwork,
  ways: Float64Array,
  random: Random,
): Int32Array {
  const { count, beforeAt, after, afterAt } = network;
  const waiting = new Int32Array(count);
  const eligible = new Int32Array(count);
  const weights = new Float64Array(count);
  const list = new Int32Array(count);
  let open = 0;
  for (let i = 0; i < count; i++) {
    waiting[i] = beforeAt[i + 1]! - beforeAt[i]!;
    if (waiting[i] === 0) eligible[open++] = i;
  }
  for (let k = 0; k < count; k++) {
    const at = drawByRegret(eligible, open, ways, weights, random);
    const i = eligible[at]!;
    eligible[at] = eligible[--open]!;
    list[k] = i;
    for (let a = afterAt[i]!; a < afterAt[i + 1]!; a++)
      if (--waiting[after[a]!]! === 0) eligible[open++] = after[a]!;
  }
  return list;
}

function drawByRegret(
  eligible: Int32Array,
  open: number,
  ways: Float64Array,
  weights: Float64Array,
  random: Random,
): number {
  let longest = 0;
  for (let e = 0; e < open; e++) longest = Math.max(longest, ways[eligible[e]!]!);
  let sum = 0;
  for (let e = 0; e < open; e++) {
    weights[e] = 1 / (1 + longest - ways[eligible[e]!]!);
    sum += weights[e]!;
  }
  let drawn = random() * sum;
  let at = 0;
  while (at < open - 1 && 0 < (drawn -= weights[at]!)) at++;
  return at;
}
