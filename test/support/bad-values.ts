import type { ProblemPattern } from './problem.js';

/** One bad value: what it is, where it goes, the value, and what the first problem must say. */
export type BadValue = readonly [
  what: string,
  path: string,
  value: unknown,
  problem: ProblemPattern,
];

/** Stands for a field that is left out. */
export const LEFT_OUT = Symbol('left out');

/** A copy of a body in which one value, found by its path, is another. */
export function changed(body: object, path: string, value: unknown): object {
  const copy = structuredClone(body);
  const names = path.split('.');
  const last = names.pop()!;
  let at = copy as Record<string, unknown>;
  for (const name of names) at = at[name] as Record<string, unknown>;
  if (value === LEFT_OUT) delete at[last];
  else at[last] = value;
  return copy;
}

/** What the problem of a bad value must at least say: its own field and value unless told otherwise. */
export function problemOf([, path, value, problem]: BadValue): ProblemPattern {
  const given = value === LEFT_OUT ? null : value;
  return { field: path, ...(Array.isArray(given) ? {} : { given }), ...problem };
}
