/** Who waits for whom, as flat lists that are fast to walk. Activities are numbered from 0. */
export interface ActivityNetwork {
  readonly count: number;
  /** Predecessors of activity i stand in `before` from `beforeAt[i]` to below `beforeAt[i + 1]`. */
  readonly before: Int32Array;
  readonly beforeAt: Int32Array;
  readonly after: Int32Array;
  readonly afterAt: Int32Array;
  /** Every activity once, none before one that it waits for. */
  readonly order: Int32Array;
}

/** Activities that wait for each other in a circle. */
export class RingError extends Error {
  constructor(readonly ring: readonly number[]) {
    super(`Activities wait for each other in a circle: ${ring.join(' → ')}. Remove one link.`);
  }
}

/**
 * Network of activities from the successors of each.
 *
 * @throws RangeError when a successor is no activity of the list
 * @throws RingError when activities wait for each other in a circle
 */
export function activityNetwork(successors: readonly (readonly number[])[]): ActivityNetwork {
  const count = successors.length;
  const links = successors.flatMap((list, from) => [...new Set(list)].map((to) => ({ from, to })));
  for (const { from, to } of links) {
    if (!Number.isInteger(to) || to < 0 || count <= to)
      throw new RangeError(`Activity ${from} names successor ${to}, but there are only ${count}.`);
  }
  const [after, afterAt] = grouped(count, links, 'from', 'to');
  const [before, beforeAt] = grouped(count, links, 'to', 'from');
  const network = { count, before, beforeAt, after, afterAt };
  return { ...network, order: topologicalOrder(network) };
}

interface Link {
  readonly from: number;
  readonly to: number;
}

function grouped(
  count: number,
  links: readonly Link[],
  by: keyof Link,
  what: keyof Link,
): [Int32Array, Int32Array] {
  const at = new Int32Array(count + 1);
  for (const link of links) at[link[by] + 1]!++;
  for (let i = 0; i < count; i++) at[i + 1]! += at[i]!;
  const next = at.slice();
  const items = new Int32Array(links.length);
  for (const link of links) items[next[link[by]]!++] = link[what];
  return [items, at];
}

type Arrows = Omit<ActivityNetwork, 'order'>;

function topologicalOrder(network: Arrows): Int32Array {
  const { count, after, afterAt, beforeAt } = network;
  const waiting = new Int32Array(count);
  const order = new Int32Array(count);
  let found = 0;
  for (let i = 0; i < count; i++) {
    waiting[i] = beforeAt[i + 1]! - beforeAt[i]!;
    if (waiting[i] === 0) order[found++] = i;
  }
  for (let k = 0; k < found; k++) {
    const i = order[k]!;
    for (let a = afterAt[i]!; a < afterAt[i + 1]!; a++)
      if (--waiting[after[a]!]! === 0) order[found++] = after[a]!;
  }
  if (found < count) throw new RingError(ringAmong(network, waiting));
  return order;
}

/** Walks back among activities that still wait until one comes up again. */
function ringAmong({ before, beforeAt }: Arrows, waiting: Int32Array): number[] {
  const path: number[] = [];
  let i = waiting.findIndex((left) => 0 < left);
  while (!path.includes(i)) {
    path.push(i);
    const list = before.subarray(beforeAt[i]!, beforeAt[i + 1]!);
    i = list.find((b) => 0 < waiting[b]!)!;
  }
  return [...path.slice(path.indexOf(i)), i].reverse();
}
