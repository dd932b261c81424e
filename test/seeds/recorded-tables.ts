import type { Tables } from '../../shared/tables/tables.js';

/** Path of a leaf in the tables, such as `forages.2.heights.rankCm`. */
type Path = string;

export interface RecordedTables {
  readonly tables: Tables;
  /** Paths of all values read so far, their tables and rows included. */
  readonly read: ReadonlySet<Path>;
}

/** The tables behind proxies that note every value that is read. One object is always one proxy. */
export function recordedTables(tables: Tables): RecordedTables {
  const read = new Set<Path>();
  const known = new WeakMap<object, object>();
  const record = <T extends object>(part: T, path: Path): T => {
    const before = known.get(part);
    if (before) return before as T;
    // Plans read the same values again and again: each is noted once.
    const noted = new Map<string | symbol, unknown>();
    const proxy = new Proxy(part, {
      get(target, key, receiver): unknown {
        const again = noted.get(key);
        if (again !== undefined) return again;
        const value = Reflect.get(target, key, receiver) as unknown;
        if (typeof key === 'symbol' || !Object.hasOwn(target, key)) return value;
        const own = path === '' ? key : `${path}.${key}`;
        read.add(own);
        const shown = typeof value === 'object' && value !== null ? record(value, own) : value;
        noted.set(key, shown);
        return shown;
      },
    });
    known.set(part, proxy);
    return proxy;
  };
  // The tables are copied, so that no two rows are one object.
  return { tables: record(structuredClone(tables), ''), read };
}

/**
 * Paths of all values in a part of the tables. A list of numbers or words counts as one value: who
 * reads a table of growth by month or of sources reads all of it.
 */
export function leavesIn(part: unknown, path = ''): Path[] {
  if (typeof part !== 'object' || part === null) return [path];
  if (Array.isArray(part) && part.every((each) => typeof each !== 'object')) return [path];
  return Object.entries(part).flatMap(([key, value]) =>
    leavesIn(value, path === '' ? key : `${path}.${key}`),
  );
}

/** A leaf by its table and fields alone, without the places of rows. */
export const fieldOf = (path: Path): string => path.replace(/\.\d+(?=\.|$)/g, '[]');
