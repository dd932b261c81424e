import { LRUCache } from 'lru-cache';
import type { HerdMove } from '../../shared/farm/told-fact.js';
import type { ToldChanges } from './told-changes.js';

/** Farms whose moves are remembered. */
const REMEMBERED = 50;

interface Known {
  readonly revision: number;
  readonly moves: readonly HerdMove[];
}

/**
 * All moves of herds of each farm, as they were at a revision of it. Where herds stand, the picture and
 * each new move go by all of them: those of ten years are read once, not for each who asks.
 */
export class KeptMoves {
  private readonly last = new LRUCache<string, Known>({ max: REMEMBERED });

  constructor(private readonly changes: ToldChanges) {}

  set(farmId: string, revision: number, moves: readonly HerdMove[]): void {
    this.last.set(farmId, { revision, moves });
  }

  /** The moves at a revision; undefined where some may have been told or taken back since. */
  at(farmId: string, revision: number): readonly HerdMove[] | undefined {
    const known = this.last.get(farmId);
    if (!known) return undefined;
    if (known.revision === revision) return known.moves;
    const told = this.changes.between(farmId, known.revision, revision);
    return told && !told.has('herd-move') ? known.moves : undefined;
  }
}
