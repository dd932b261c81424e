import type { LinearProgram } from '../../shared/ration/linear-program.js';

/**
 * The least cost of a small linear program by trying every corner: every choice of as many bounds and
 * rows as there are columns, taken as equations. Slow, and right whatever a solver does.
 *
 * @returns nothing when no corner keeps to all rows
 */
export function leastByCorners({ columns, rows }: LinearProgram): number | undefined {
  const n = columns.length;
  const unit = (i: number): number[] => columns.map((_, k) => (k === i ? 1 : 0));
  const planes = [
    ...rows.flatMap(({ weights, least, most }) =>
      [...new Set([least, most])].flatMap((at) => (at === undefined ? [] : [{ weights, at }])),
    ),
    ...columns.flatMap(({ least, most }, i) => [
      { weights: unit(i), at: least },
      { weights: unit(i), at: most },
    ]),
  ];
  const keeps = (x: readonly number[]): boolean =>
    columns.every(({ least, most }, i) => least - EDGE <= x[i]! && x[i]! <= most + EDGE) &&
    rows.every(({ weights, least = -Infinity, most = Infinity }) => {
      const sum = dot(weights, x);
      return least - EDGE <= sum && sum <= most + EDGE;
    });
  let best: number | undefined;
  for (const chosen of choices(planes.length, n)) {
    const x = solved(chosen.map((i) => [...planes[i]!.weights, planes[i]!.at]));
    if (!x || !keeps(x)) continue;
    const cost = dot(
      columns.map((column) => column.cost),
      x,
    );
    if (best === undefined || cost < best) best = cost;
  }
  return best;
}

const EDGE = 1e-7;
const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, each, i) => sum + each * b[i]!, 0);

/** Every choice of k numbers below n. */
function* choices(n: number, k: number, from = 0): Generator<number[]> {
  if (k === 0) return yield [];
  for (let i = from; i <= n - k; i++) {
    for (const rest of choices(n, k - 1, i + 1)) yield [i, ...rest];
  }
}

/** Gauss with the largest pivot; nothing when the equations are not independent. */
function solved(system: number[][]): number[] | undefined {
  const n = system.length;
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let r = c; r < n; r++) {
      if (Math.abs(system[pivot]![c]!) < Math.abs(system[r]![c]!)) pivot = r;
    }
    if (Math.abs(system[pivot]![c]!) < 1e-10) return undefined;
    [system[c], system[pivot]] = [system[pivot]!, system[c]!];
    for (let r = 0; r < n; r++) {
      if (r === c) continue;
      const factor = system[r]![c]! / system[c]![c]!;
      for (let k = c; k <= n; k++) system[r]![k]! -= factor * system[c]![k]!;
    }
  }
  return system.map((row, i) => row[n]! / row[i]!);
}
