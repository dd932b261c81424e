import type { EntityManager } from 'typeorm';
import { ToldFactEntity } from '../told/told-fact.entity.js';

/** Now, but after everything that was told before, so that the order is never in doubt. */
export async function nextMoment(manager: EntityManager, farmId: string): Promise<number> {
  const [newest] = await manager.find(ToldFactEntity, {
    where: { farmId },
    select: { id: true, toldAt: true },
    order: { toldAt: 'DESC' },
    take: 1,
  });
  return Math.max(Date.now(), newest ? Date.parse(newest.toldAt) + 1 : 0);
}
