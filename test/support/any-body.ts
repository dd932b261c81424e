import fc from 'fast-check';

/** Values that a form, a script or a slip of the hand might send in place of any other. */
export const ODD_VALUES: readonly unknown[] = [
  null,
  true,
  0,
  -1,
  0.1,
  1e-320,
  1e308,
  -1e308,
  '',
  ' ',
  'NaN',
  '1e5',
  '2027-02-30',
  '2199-12-31',
  '1900-01-01',
  '__proto__',
  'constructor',
  "'; DROP TABLE farms; --",
  '\u0000',
  '\ud800',
  '\u202e鶏',
  'x'.repeat(5000),
  [],
  [[]],
  {},
  [null],
  { toString: 1 },
  { length: -1 },
  { __proto__: null, constructor: 1 },
];
const ODD = fc.constantFrom(...ODD_VALUES);

/** Any JSON at all, nested a few deep. */
export const anyJson: fc.Arbitrary<unknown> = fc.oneof(fc.jsonValue({ maxDepth: 4 }), ODD);

/** A valid body in which one to three values, anywhere in it, are something else or are gone. */
export function mutated(valid: object): fc.Arbitrary<unknown> {
  const mutation = fc.record({
    path: fc.constantFrom(...pathsIn(valid)),
    value: fc.oneof(ODD, fc.jsonValue({ maxDepth: 2 }), fc.double({ noNaN: true }), fc.integer()),
    isLeftOut: fc.boolean(),
  });
  return fc.array(mutation, { minLength: 1, maxLength: 3 }).map((mutations) => {
    const copy = structuredClone(valid);
    for (const each of mutations) change(copy, each.path, each.isLeftOut ? undefined : each.value);
    return copy;
  });
}

type Path = readonly string[];

export function pathsIn(value: unknown, at: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [at];
  // One month stands for all twelve, so that other fields get their turn.
  const isPlainList = Array.isArray(value) && value.every((each) => typeof each !== 'object');
  const entries = Object.entries(value).slice(0, isPlainList ? 1 : undefined);
  const inner = entries.flatMap(([name, each]) => pathsIn(each, [...at, name]));
  return at.length === 0 ? inner : [at, ...inner];
}

/** Changes what a path leads to, if an earlier change has not taken it away. */
export function change(body: object, path: Path, value: unknown): void {
  let at: unknown = body;
  for (const name of path.slice(0, -1)) {
    if (typeof at !== 'object' || at === null) return;
    at = (at as Record<string, unknown>)[name];
  }
  if (typeof at !== 'object' || at === null) return;
  const last = path[path.length - 1]!;
  if (value === undefined) delete (at as Record<string, unknown>)[last];
  else (at as Record<string, unknown>)[last] = value;
}
