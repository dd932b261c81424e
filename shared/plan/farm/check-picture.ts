import type { FarmPicture } from '../../farm/picture.js';
import { FieldError, type FieldProblem } from '../../problems/field-problem.js';
import type { Tables } from '../../tables/tables.js';
import { hasGrass } from './has-grass.js';
import { batchRequest } from '../batch-request.js';
import { checkBatch, unknownPaddock } from '../check-batch.js';
import { checkPasture } from '../pasture/check-pasture.js';
import { pastureOfFarm } from '../pasture/pasture-of-farm.js';

/**
 * Refuses a farm of which a batch or the pasture cannot be planned, where leaving it out of the
 * household's work in silence would be worse. A batch is named by its place in the list.
 *
 * @throws FieldError naming every field
 */
export function refuseUnplannable(picture: FarmPicture, tables: Tables): void {
  const problems = [
    ...picture.batches.flatMap(({ id }, i) =>
      problemsOf(() => checkBatch(batchRequest(picture, tables, id))).map((problem) => ({
        ...problem,
        field: problem.field.replace(/^batch\b/, `batches.${i}`),
      })),
    ),
    ...picture.batches.flatMap((batch, i) =>
      unknownPaddock(
        batch,
        picture.paddocks.map(({ id }) => id),
        `batches.${i}.`,
      ),
    ),
    ...(hasGrass(picture) ? problemsOf(() => checkPasture(pastureOfFarm(picture, tables))) : []),
  ];
  if (0 < problems.length) throw new FieldError(problems);
}

function problemsOf(check: () => void): readonly FieldProblem[] {
  try {
    check();
    return [];
  } catch (error) {
    if (error instanceof FieldError) return error.problems;
    throw error;
  }
}
