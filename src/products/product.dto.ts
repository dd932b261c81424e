import { problemsOfOneOf } from '../../shared/farm/check-row.js';
import type { RowDescription } from '../../shared/farm/field.js';
import { anyProduct, productFields, type Product } from '../../shared/farm/product.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { LIGHT, weightOf } from '../common/body-weight.js';
import { dtoOf } from '../common/dto-of.js';

/** Every product class, for the API document. */
export const PRODUCT_DTOS = Object.values<RowDescription>(productFields).map(dtoOf);

/** A product without its id, checked by the rules of its kind. */
export function checkSentProduct(plain: unknown): Product & { version?: number } {
  if (typeof plain === 'object' && plain !== null) weightOf(plain, LIGHT);
  const problems = problemsOfOneOf(anyProduct, plain);
  if (0 < problems.length) throw new FieldError(problems);
  return plain as Product;
}
