import { plainToInstance } from 'class-transformer';
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
  try {
    const instance = plainToInstance(dto, plain);
    return { instance, errors: validateSync(instance, VALIDATION) };
  } catch {
    // The libraries stumble over fields named like an object's own, and over endless nesting.
    const strange = strangeValue(plain, path);
    throw unreadable(strange.path, strange.value);
  }
}

/** Names that every object answers to; as fields they lead the libraries astray. */
const STRANGE = ['constructor', '__proto__', 'prototype', 'toString', 'valueOf', 'hasOwnProperty'];
const DEEPEST = 8;

/** The first value that holds a field of such a name, with its path; the whole when none is found. */
function strangeValue(plain: object, path: string): { path: string; value: unknown } {
  const queue: { value: unknown; path: string; depth: number }[] = [
    { value: plain, path, depth: 0 },
  ];
  for (const { value, path: at, depth } of queue) {
    if (typeof value !== 'object' || value === null) continue;
    if (STRANGE.some((name) => Object.hasOwn(value, name))) return { path: at || 'body', value };
    if (depth === DEEPEST) continue;
    for (const [name, inner] of Object.entries(value)) {
      queue.push({ value: inner, path: at === '' ? name : `${at}.${name}`, depth: depth + 1 });
    }
  }
  return { path: path || 'body', value: undefined };
}

export const unreadable = (field: string, given?: unknown): FieldError =>
  new FieldError([
    {
      field,
      code: 'not-allowed',
      given,
      allowed: ['plain fields and values'],
      fix: 'Remove fields such as "constructor" and lists nested without end.',
    },
  ]);
