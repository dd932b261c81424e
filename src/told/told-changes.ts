import { LRUCache } from 'lru-cache';
import type { ToldKind } from '../../shared/farm/told-fact.js';

/** Revisions of all farms that are remembered. */
const REMEMBERED = 1000;
/** Revisions between two that are looked through. */
const MOST_BETWEEN = 50;

/**
 * Which revisions of farms came about by telling alone, and of which kinds: whoever holds what was
 * read at one revision reads only these kinds again for a later one. What it does not know of, another
 * process or another kind of change, it says nothing of.
 */
export class ToldChanges {
  private readonly kinds = new LRUCache<string, readonly ToldKind[]>({ max: REMEMBERED });

  /** A farm came to a revision by facts of these kinds, and by nothing else. */
  add(farmId: string, revision: number, kinds: readonly ToldKind[]): void {
    this.kinds.set(`${farmId}/${revision}`, kinds);
  }

  /** Kinds that were told after one revision up to another; undefined where anything else may have changed. */
  between(farmId: string, from: number, to: number): ReadonlySet<ToldKind> | undefined {
    if (to < from || MOST_BETWEEN < to - from) return undefined;
    const told = new Set<ToldKind>();
    for (let revision = from + 1; revision <= to; revision++) {
      const kinds = this.kinds.get(`${farmId}/${revision}`);
      if (!kinds) return undefined;
      for (const kind of kinds) told.add(kind);
    }
    return told;
  }
}
