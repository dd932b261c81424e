import { LRUCache } from 'lru-cache';
import type { ToldKind } from '../../shared/farm/told-fact.js';
import type { ToldChanges } from './told-changes.js';

/** Answers that are remembered, of all farms. */
const REMEMBERED = 50;

interface Known<Value extends object> {
  readonly revision: number;
  readonly value: Value;
}

/**
 * What was read of each farm, as it was at a revision of it: it is not read again for whoever asks
 * after entries that leave it as it is.
 */
export class KeptAtRevision<Value extends object> {
  private readonly last = new LRUCache<string, Known<Value>>({ max: REMEMBERED });

  /** @param goesBy kinds of entries that may change it */
  constructor(
    private readonly changes: ToldChanges,
    private readonly goesBy: readonly ToldKind[],
  ) {}

  /** @param of what of the farm, where several things of one are kept */
  set(farmId: string, revision: number, value: Value, of = ''): void {
    this.last.set(`${farmId}/${of}`, { revision, value });
  }

  /** As it is at a revision; undefined where it may have changed since it was read. */
  at(farmId: string, revision: number, of = ''): Value | undefined {
    const key = `${farmId}/${of}`;
    const known = this.last.get(key);
    if (!known) return undefined;
    if (known.revision === revision) return known.value;
    const told = this.changes.between(farmId, known.revision, revision);
    if (!told || this.goesBy.some((kind) => told.has(kind))) return undefined;
    // Else it would be forgotten when many entries lie between.
    this.last.set(key, { ...known, revision });
    return known.value;
  }
}
