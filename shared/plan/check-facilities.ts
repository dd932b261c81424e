import type { Facility } from '../farm/facility.js';
import { FieldError } from '../problems/field-problem.js';
import type { Tables } from '../tables/tables.js';

/** Throws when a wall or roof names a material that no table has. */
export function checkMaterials(
  facility: Facility,
  tables: Pick<Tables, 'materials'>,
  path = '',
): void {
  if (facility.kind !== 'brooder') return;
  const known = tables.materials.map((m) => m.id);
  const problems = (['walls', 'roof'] as const).flatMap((part) =>
    (facility[part]?.layers ?? []).flatMap((layer, i) =>
      known.includes(layer.materialId)
        ? []
        : [
            {
              field: `${path}${part}.layers.${i}.materialId`,
              code: 'not-allowed' as const,
              given: layer.materialId,
              allowed: known,
              fix: 'Choose a material of the table, or give the R-value instead.',
            },
          ],
    ),
  );
  if (0 < problems.length) throw new FieldError(problems);
}
