import { LRUCache } from 'lru-cache';
import type { EntityManager } from 'typeorm';
import { FieldError } from '../../shared/problems/field-problem.js';
import { ToldFactEntity } from './told-fact.entity.js';

/** Facts of one farm: more than thirty years of a household that tells thirty a day. */
const MOST_FACTS = 400_000;

/** Sees that a farm is not filled without end. Ten years are not counted anew for each entry. */
export class RoomForFacts {
  /** As many facts as a farm has, or more: what was refused after it was counted is still in it. */
  private readonly counted = new LRUCache<string, number>({ max: 200 });

  /** @throws FieldError when the farm has no room for so many more */
  async check(
    manager: EntityManager,
    farmId: string,
    more: number,
    fieldOf: (k: number, field: string) => string,
  ): Promise<void> {
    const known = this.counted.get(farmId);
    if (known !== undefined && known + more <= MOST_FACTS) {
      this.counted.set(farmId, known + more);
      return;
    }
    const given = (await manager.countBy(ToldFactEntity, { farmId })) + more;
    this.counted.set(farmId, given);
    if (given <= MOST_FACTS) return;
    throw new FieldError([
      {
        field: fieldOf(0, 'kind'),
        code: 'out-of-bounds',
        given,
        max: MOST_FACTS,
        fix: 'This farm is full of facts. Save it as an archive and go on with a new farm.',
      },
    ]);
  }
}
