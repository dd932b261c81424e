import type { Entry } from './entry.js';

/**
 * Entries that are being written, jotted down where it is done at once: a page that is closed or
 * loaded anew right after something was shown as told has not lost it. A drop is jotted as null.
 */
const PREFIX = 'broodfold-jotted-';
const keyOf = (n: number): string => `${PREFIX}${n}`;

export function jot(n: number, entry: Entry | undefined): void {
  try {
    localStorage.setItem(keyOf(n), JSON.stringify(entry ?? null));
  } catch {
    // Full, or nothing is kept here: the store has it in a moment.
  }
}

/** The store has it, unless something else was jotted of it since. */
export function unjot(n: number, entry: Entry | undefined): void {
  try {
    const key = keyOf(n);
    if (localStorage.getItem(key) === JSON.stringify(entry ?? null)) localStorage.removeItem(key);
  } catch {
    // Nothing is kept here.
  }
}

/** What was jotted by a page that did not come to write it; undefined of what it was to drop. */
export function jotted(): ReadonlyMap<number, Entry | undefined> {
  try {
    const keys = Object.keys(localStorage).filter((key) => key.startsWith(PREFIX));
    return new Map(
      keys.map((key) => [
        Number(key.slice(PREFIX.length)),
        (JSON.parse(localStorage.getItem(key) ?? 'null') as Entry | null) ?? undefined,
      ]),
    );
  } catch {
    return new Map();
  }
}
