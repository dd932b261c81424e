import type { EntityManager } from 'typeorm';
import { BatchEntity } from '../batches/batch.entity.js';
import { tellsOfBatch } from '../batches/tells-of-batch.js';
import { tellRow } from '../rows/tell-row.js';

/**
 * Birds that are to stand in paddocks that go stand in another, or nowhere: in which strip of a
 * paddock that was split nobody has said. What it was before stands in the record.
 */
export async function moveBirds(
  manager: EntityManager,
  farmId: string,
  { from, to }: { readonly from: readonly string[]; readonly to?: string },
): Promise<void> {
  const batches = await manager.findBy(BatchEntity, { farmId });
  for (const batch of batches) {
    const { grassPaddockId, ...details } = batch.details;
    if (grassPaddockId === undefined || !from.includes(grassPaddockId)) continue;
    const before = structuredClone(batch);
    batch.details = { ...details, ...(to === undefined ? {} : { grassPaddockId: to }) };
    await tellRow(manager, tellsOfBatch, { before, after: await manager.save(batch) });
  }
}
