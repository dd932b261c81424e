import { validateSync, type ValidationError } from 'class-validator';
import { FieldError } from '../../shared/problems/field-problem.js';
import { LIGHT, weightOf, type BodyLimits } from './body-weight.js';
import { fieldErrorOf } from './problem.js';

/** Unknown fields are named rather than dropped: a misspelt field must not be lost in silence. */
export const VALIDATION = {
  whitelist: true,
  forbidNonWhitelisted: true,
  forbidUnknownValues: true,
} as const;

/** Checks a plain object against a DTO class. `path` stands before the fields in problems. */
export function checkDto<T extends object>(
  dto: new () => T,
  plain: unknown,
  path = '',
  limits: BodyLimits = LIGHT,
): T {
  if (typeof plain !== 'object' || plain === null || Array.isArray(plain)) {
    throw new FieldError([
      {
        field: path || 'body',
        code: 'not-allowed',
        given: plain,
        allowed: ['a JSON object'],
        fix: 'Send one object in braces.',
      },
    ]);
  }
  const { instance, errors } = findingsOf(dto, plain, path, limits);
  if (0 < errors.length) throw fieldErrorOf(errors, path);
  return instance;
}

/** The instance of a DTO class and what its rules found. */
export function findingsOf<T extends object>(
  dto: new () => T,
  plain: object,
  path = '',
  limits: BodyLimits = LIGHT,
): { instance: T; errors: ValidationError[] } {
  weightOf(plain, limits, path);
  const instance = new dto();
  // Defined, not assigned: a field that is called __proto__ is one that nobody knows.
  for (const [field, value] of Object.entries(plain))
    Object.defineProperty(instance, field, {
      ...{ value, writable: true, enumerable: true, configurable: true },
    });
  return { instance, errors: validateSync(instance, VALIDATION) };
}
