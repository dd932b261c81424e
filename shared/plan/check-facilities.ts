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

/** Throws when a brooder names a circuit that is not among the farm's. */
export function checkCircuit(facility: Facility, all: readonly Facility[], path = ''): void {
  if (facility.kind !== 'brooder' || facility.circuitId === undefined) return;
  const circuits = all.filter((other) => other.kind === 'circuit').map((circuit) => circuit.id);
  if (circuits.includes(facility.circuitId)) return;
  throw new FieldError([
    {
      field: `${path}circuitId`,
      code: 'not-allowed',
      given: facility.circuitId,
      allowed: circuits.slice(0, 20),
      fix: 'Name a circuit of this farm, or leave it out.',
    },
  ]);
}
