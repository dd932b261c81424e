import type { Tables } from '../../shared/tables/tables.js';

/** Path of a leaf in the tables, such as `forages.2.heights.rankCm`. */
type Path = string;

export interface RecordedTables {
  readonly tables: Tables;
  /** Paths of all leaves read so far. */
  readonly read: ReadonlySet<Path>;
}

/** A copy of the tables that notes every leaf that is read. One object is always one copy. */
export function recordedTables(tables: Tables): RecordedTables {
  const read = new Set<Path>();
  const known = new Map<object, object>();
  const copyOf = (part: object, path: Path): object => {
    const before = known.get(part);
    if (before) return before;
    const copy: object = Array.isArray(part) ? [] : {};
    known.set(part, copy);
    for (const [key, value] of Object.entries(part) as [string, unknown][]) {
      const own = path === '' ? key : `${path}.${key}`;
      if (isLeaf(value)) noteRead(copy, key, value, () => read.add(own));
      else Object.defineProperty(copy, key, { ...PLAIN, value: copyOf(value as object, own) });
    }
    return copy;
  };
  return { tables: copyOf(tables, '') as Tables, read };
}

const PLAIN = { enumerable: true, configurable: true, writable: true };

/** Plans read the same values again and again: from the first time on it is a field like others. */
function noteRead(row: object, key: string, value: unknown, note: () => void): void {
  const get = (): unknown => {
    note();
    Object.defineProperty(row, key, { ...PLAIN, value });
    return value;
  };
  Object.defineProperty(row, key, { enumerable: true, configurable: true, get });
}

/** Whether it is one value: a number, a word, or a list of them. */
const isLeaf = (part: unknown): boolean =>
  typeof part !== 'object' ||
  part === null ||
  (Array.isArray(part) && part.every((each) => typeof each !== 'object'));

/**
 * Paths of all values in a part of the tables. A list of numbers or words counts as one value: who
 * reads a table of growth by month or of sources reads all of it.
 */
export function leavesIn(part: unknown, path = ''): Path[] {
  if (isLeaf(part)) return [path];
  return Object.entries(part as object).flatMap(([key, value]) =>
    leavesIn(value, path === '' ? key : `${path}.${key}`),
  );
}

/** A leaf by its table and fields alone, without the places of rows. */
export const fieldOf = (path: Path): string => path.replace(/\.\d+(?=\.|$)/g, '[]');
