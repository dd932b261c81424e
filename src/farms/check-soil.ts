import { FieldError } from '../../shared/problems/field-problem.js';
import type { Tables } from '../../shared/tables/tables.js';

/** @throws FieldError when the soil of the garden is none of the table's */
export function checkSoil(
  id: string | undefined,
  { soils }: Pick<Tables, 'soils'>,
  path = '',
): void {
  const allowed = soils.map((soil) => soil.id);
  if (id === undefined || allowed.includes(id)) return;
  throw new FieldError([
    {
      field: `${path}gardenSoilId`,
      code: 'not-allowed',
      given: id,
      allowed,
      fix: 'Choose one of these soils, or leave the field out.',
    },
  ]);
}
