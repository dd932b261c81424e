import { In, type EntityManager } from 'typeorm';
import type { FactOf, ToldFact } from '../../shared/farm/told-fact.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import { PhotoEntity } from '../photos/photo.entity.js';

/** Keeps the photos that notes name for good, or refuses a note of a photo that is not there. */
export async function settlePhotos(
  manager: EntityManager,
  farmId: string,
  notes: readonly FactOf<'note'>[],
  fieldOf: (fact: ToldFact, field: string) => string,
): Promise<void> {
  for (const note of notes) {
    const ids = [...(note.details.photos ?? [])];
    if (ids.length === 0) continue;
    const where = { farmId, id: In(ids) };
    const there = await manager.find(PhotoEntity, { select: { id: true }, where });
    const missing = ids.findIndex((id) => there.every((photo) => photo.id !== id));
    if (0 <= missing)
      throw new FieldError([notThere(fieldOf(note, `details.photos.${missing}`), ids[missing])]);
    await manager.update(PhotoEntity, where, { isTold: true });
  }
}

const notThere = (field: string, given: unknown): FieldProblem => ({
  field,
  code: 'not-allowed',
  given,
  allowed: [],
  fix: 'This photo is not there. Send it first (PUT photos/ID), or leave it out.',
});
