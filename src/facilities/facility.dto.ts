import { problemsOfOneOf } from '../../shared/farm/check-row.js';
import { anyFacility, facilityFields, type Facility } from '../../shared/farm/facility.js';
import type { RowDescription } from '../../shared/farm/field.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { LIGHT, weightOf } from '../common/body-weight.js';
import { dtoOf } from '../common/dto-of.js';

/** Every facility class, for the API document. */
export const FACILITY_DTOS = Object.values<RowDescription>(facilityFields).map(dtoOf);

/** A facility without its id, checked by the rules of its kind. */
export function checkFacility(plain: unknown): Omit<Facility, 'id'> & { id?: string } {
  if (typeof plain === 'object' && plain !== null) weightOf(plain, LIGHT);
  const problems = problemsOfOneOf(anyFacility, plain);
  if (0 < problems.length) throw new FieldError(problems);
  return plain as Facility;
}
