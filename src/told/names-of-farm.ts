import type { EntityManager } from 'typeorm';
import { BatchEntity } from '../batches/batch.entity.js';
import { FarmEntity } from '../farms/farm.entity.js';
import { HerdEntity } from '../herds/herd.entity.js';
import { PaddockEntity } from '../paddocks/paddock.entity.js';

interface Named {
  readonly id: string;
  readonly name: string;
}

/** What can be told of on a farm, and where its day begins: no entry changes it. */
export interface NamesOfFarm {
  readonly timeZone: string;
  readonly batches: readonly Named[];
  readonly herds: readonly Named[];
  readonly paddocks: readonly Named[];
}

export async function namesOfFarm(manager: EntityManager, farmId: string): Promise<NamesOfFarm> {
  const { timeZone } = await manager.findOneOrFail(FarmEntity, {
    where: { id: farmId },
    select: { id: true, timeZone: true },
  });
  const named = { where: { farmId }, select: { id: true, name: true } } as const;
  // One after another: they share a connection.
  const batches = await manager.find(BatchEntity, named);
  const herds = await manager.find(HerdEntity, named);
  return { timeZone, batches, herds, paddocks: await manager.find(PaddockEntity, named) };
}
