import { plainToInstance } from 'class-transformer';
import { validateSync } from 'class-validator';
import { FieldError } from '../../shared/problems/field-problem.js';
import { fieldErrorOf } from './problem.js';

/** Checks a plain object against a DTO class. `path` stands before the fields in problems. */
export function checkDto<T extends object>(dto: new () => T, plain: unknown, path = ''): T {
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
  const instance = plainToInstance(dto, plain);
  const errors = validateSync(instance, VALIDATION);
  if (0 < errors.length) throw fieldErrorOf(errors, path);
  return instance;
}

/** Unknown fields are named rather than dropped: a misspelt field must not be lost in silence. */
export const VALIDATION = {
  whitelist: true,
  forbidNonWhitelisted: true,
  forbidUnknownValues: true,
} as const;
