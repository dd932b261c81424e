import { LRUCache } from 'lru-cache';
import type { HerdMove } from '../../shared/farm/told-fact.js';

/** Farms whose moves are remembered. */
const REMEMBERED = 50;

/** What moves of a farm go by: any change of it makes them be read again. */
export interface MovesAt {
  readonly farmId: string;
  readonly revision: number;
  /** The day since which they are read. */
  readonly since: string;
}

/**
 * The moves of herds of each farm, as they were read last. After a move where herds stand, the picture
 * and the round all ask for them: ten years of moves are gone through once, not for each.
 */
export class KeptMoves {
  private readonly last = new LRUCache<string, { at: MovesAt; moves: readonly HerdMove[] }>({
    max: REMEMBERED,
  });

  set(at: MovesAt, moves: readonly HerdMove[]): void {
    this.last.set(at.farmId, { at, moves });
  }

  get({ farmId, revision, since }: MovesAt): readonly HerdMove[] | undefined {
    const known = this.last.get(farmId);
    const isSo = known?.at.revision === revision && known.at.since === since;
    return isSo ? known.moves : undefined;
  }
}
