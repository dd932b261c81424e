/** A field that two people changed to different values. */
export interface Clash {
  /** Path of the field, such as `name` or `conditions.peopleNeeded`. */
  readonly field: string;
  readonly mine: unknown;
  readonly theirs: unknown;
}

/** Two changes of one row as one: theirs where the two clash, until somebody decides. */
export interface Merged {
  readonly row: Record<string, unknown>;
  readonly clashes: readonly Clash[];
}

type Fields = Readonly<Record<string, unknown>>;

/**
 * Joins two changes that were made of the same row (a three-way merge).
 *
 * A field that only one of the two changed is as that one has it. Parts are joined field by field,
 * lists of numbers of one length place by place, and other lists by their entries when the two did
 * not take away the same one. What both changed to different values clashes. A field that is
 * undefined is the same as one that is left out.
 *
 * @param loaded the row that both began from; undefined when it is not known, and then every
 *   difference clashes
 */
export function mergeRow(loaded: Fields | undefined, mine: Fields, theirs: Fields): Merged {
  const clashes: Clash[] = [];
  const row = mergeFields(loaded, mine, theirs, '', clashes);
  return { row, clashes };
}

/** A merged row with the fields set for which mine is to be kept. */
export function keepMine({ row }: Merged, clashes: readonly Clash[]): Record<string, unknown> {
  return clashes.reduce((sofar, { field, mine }) => withValue(sofar, field.split('.'), mine), row);
}

/** Whether two values are the same, fields that are undefined counting as left out. */
export function isSame(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (Array.isArray(a) && Array.isArray(b)) {
    return a.length === b.length && a.every((each, i) => isSame(each, b[i]));
  }
  if (!isFields(a) || !isFields(b)) return false;
  return namesIn(a, b).every((name) => isSame(own(a, name), own(b, name)));
}

function mergeFields(
  loaded: Fields | undefined,
  mine: Fields,
  theirs: Fields,
  path: string,
  clashes: Clash[],
): Record<string, unknown> {
  const entries = namesIn(mine, theirs).flatMap((name): [string, unknown][] => {
    const field = path === '' ? name : `${path}.${name}`;
    const three = {
      loaded: loaded && own(loaded, name),
      mine: own(mine, name),
      theirs: own(theirs, name),
    };
    const value = mergeValue(three, loaded !== undefined, field, clashes);
    return value === undefined ? [] : [[name, value]];
  });
  return Object.fromEntries(entries);
}

interface Three {
  readonly loaded: unknown;
  readonly mine: unknown;
  readonly theirs: unknown;
}

function mergeValue(
  { loaded, mine, theirs }: Three,
  isKnown: boolean,
  field: string,
  clashes: Clash[],
): unknown {
  if (isSame(mine, theirs)) return theirs;
  if (isKnown && isSame(mine, loaded)) return theirs;
  if (isKnown && isSame(theirs, loaded)) return mine;
  if (isFields(mine) && isFields(theirs)) {
    return mergeFields(isFields(loaded) ? loaded : undefined, mine, theirs, field, clashes);
  }
  const list = isKnown ? mergeLists(loaded, mine, theirs) : undefined;
  if (list) return list;
  clashes.push({ field, mine, theirs });
  return theirs;
}

/** Two changed lists as one, or undefined when the changes touch each other. */
function mergeLists(loaded: unknown, mine: unknown, theirs: unknown): unknown[] | undefined {
  if (!Array.isArray(loaded) || !Array.isArray(mine) || !Array.isArray(theirs)) return undefined;
  if ([loaded, mine, theirs].every((list) => list.every((each) => typeof each === 'number'))) {
    return mergeNumbers(loaded as number[], mine as number[], theirs as number[]);
  }
  if (![loaded, mine, theirs].every(isWithoutTwins)) return undefined;
  const goneFromMine = loaded.filter((each) => !has(mine, each));
  const goneFromTheirs = loaded.filter((each) => !has(theirs, each));
  const isTouching = goneFromMine.some((each) => has(goneFromTheirs, each));
  if (isTouching || !isInOrder(loaded, mine) || !isInOrder(loaded, theirs)) return undefined;
  const kept = theirs.filter((each) => !has(goneFromMine, each));
  return [...kept, ...mine.filter((each) => !has(loaded, each) && !has(kept, each))];
}

/** Numbers by month or weekday: the place says what each is for. */
function mergeNumbers(
  loaded: readonly number[],
  mine: readonly number[],
  theirs: readonly number[],
): number[] | undefined {
  const isOneLength = loaded.length === mine.length && loaded.length === theirs.length;
  const isClashing = loaded.some(
    (each, i) => mine[i] !== each && theirs[i] !== each && mine[i] !== theirs[i],
  );
  if (!isOneLength || isClashing) return undefined;
  return loaded.map((each, i) => (mine[i] === each ? theirs[i]! : mine[i]!));
}

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const own = (of: Fields, name: string): unknown => (Object.hasOwn(of, name) ? of[name] : undefined);
const namesIn = (a: Fields, b: Fields): string[] => [
  ...new Set([...Object.keys(a), ...Object.keys(b)]),
];
const has = (list: readonly unknown[], value: unknown): boolean =>
  list.some((each) => isSame(each, value));
const isWithoutTwins = (list: readonly unknown[]): boolean =>
  list.every((each, i) => !has(list.slice(0, i), each));
/** Whether what a changed list has kept is in the order it was in. */
const isInOrder = (loaded: readonly unknown[], changed: readonly unknown[]): boolean =>
  isSame(
    loaded.filter((each) => has(changed, each)),
    changed.filter((each) => has(loaded, each)),
  );

function withValue(
  row: Fields,
  [name, ...rest]: string[],
  value: unknown,
): Record<string, unknown> {
  if (name === undefined) return { ...row };
  const inner = own(row, name);
  const next = rest.length === 0 ? value : withValue(isFields(inner) ? inner : {}, rest, value);
  return { ...row, [name]: next };
}
