/** A plan as seen from one end of the project. */
export interface DirectedPlan {
  /** Whether times are counted back from the end of the project, and links turned round. */
  readonly isFromEnd: boolean;
  /** Every activity once, the earliest start first, none before one that it waits for. */
  readonly list: Int32Array;
  /** Periods from the end that the plan is seen from, by activity. */
  readonly starts: Int32Array;
  readonly length: number;
  /** Mean end of the activities as a share of the length, 0 to 1: low when little is late. */
  readonly meanEnd: number;
}

/**
 * A plan made of starts.
 *
 * @param list  an order in which no activity stands before one that it waits for
 */
export function directedPlan(
  isFromEnd: boolean,
  list: Int32Array,
  starts: Int32Array,
  length: number,
  durations: Int32Array,
): DirectedPlan {
  let ends = 0;
  for (let i = 0; i < list.length; i++) ends += starts[i]! + durations[i]!;
  const sorted = inOrderOfKeys(list, starts, length, new Int32Array(list.length));
  const meanEnd = ends / Math.max(1, list.length * length);
  return { isFromEnd, list: sorted, starts, length, meanEnd };
}

/** The same plan counted from the other end of the project. */
export function seenFromOtherEnd(plan: DirectedPlan, durations: Int32Array): DirectedPlan {
  const { isFromEnd, list, starts, length } = plan;
  const turned = starts.map((start, i) => length - start - durations[i]!);
  return directedPlan(!isFromEnd, list.slice().reverse(), turned, length, durations);
}

/**
 * The items of a list by their keys; those of equal keys stay in the order of the list.
 *
 * @param keys     whole numbers from 0 to `largest`, by item
 * @param into     takes the answer; not the list itself
 */
export function inOrderOfKeys(
  list: Int32Array,
  keys: Int32Array,
  largest: number,
  into: Int32Array,
): Int32Array {
  const places = new Int32Array(largest + 2);
  for (let k = 0; k < list.length; k++) places[keys[list[k]!]! + 1]!++;
  for (let key = 0; key <= largest; key++) places[key + 1]! += places[key]!;
  for (let k = 0; k < list.length; k++) {
    const i = list[k]!;
    into[places[keys[i]!]!++] = i;
  }
  return into;
}
