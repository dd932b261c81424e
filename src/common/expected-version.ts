import { applyDecorators, createParamDecorator, type ExecutionContext } from '@nestjs/common';
import { ApiConflictResponse, ApiHeader } from '@nestjs/swagger';
import type { Request } from 'express';
import { FieldError } from '../../shared/problems/field-problem.js';

/** The version of a row that a change was made from, and the change as it was sent. */
export interface Expected {
  /** Left out, the change is made whatever the row is now. */
  readonly version?: number;
  readonly yours?: unknown;
}

/** Somebody else has changed the row meanwhile: the row as it is now, and what was to be saved. */
export class ConflictError extends Error {
  constructor(
    readonly current: unknown,
    readonly yours?: unknown,
    message = 'Somebody else has changed this since you opened it. Nothing was saved.',
  ) {
    super(message);
    this.name = 'ConflictError';
  }
}

/** @throws ConflictError when the row is another version than the one expected */
export async function refuseOutdated(
  version: number,
  expected: Expected,
  current: () => unknown,
): Promise<void> {
  if (expected.version === undefined || expected.version === version) return;
  throw new ConflictError(await current(), expected.yours);
}

/** The version in `If-Match`, else that in the body. */
export const ExpectedVersion = createParamDecorator((_data: unknown, context: ExecutionContext) => {
  const { headers, body } = context.switchToHttp().getRequest<Request>();
  const sent = (body ?? undefined) as { version?: unknown } | undefined;
  const inBody = typeof sent?.version === 'number' ? sent.version : undefined;
  const version = versionIn(headers['if-match']) ?? inBody;
  return {
    ...(version === undefined ? {} : { version }),
    ...(sent === undefined ? {} : { yours: sent }),
  } satisfies Expected;
});

/** `"3"` or 3; `*` stands for any version. */
function versionIn(header: string | undefined): number | undefined {
  if (header === undefined || header.trim() === '*') return undefined;
  const [, digits] = /^\s*(?:W\/)?"?(\d{1,9})"?\s*$/.exec(header) ?? [];
  if (digits !== undefined) return Number(digits);
  throw new FieldError([
    {
      field: 'If-Match',
      code: 'not-allowed',
      given: header,
      allowed: ['the version of the row, such as "3"', '*'],
      fix: 'Send the version that came with the row, or leave the header out.',
    },
  ]);
}

/** Says in the API's document that a change may be refused because the row is newer. */
export const TakesVersion = (): MethodDecorator =>
  applyDecorators(
    ApiHeader({
      name: 'If-Match',
      required: false,
      description: 'The version the change was made from; a body can hold it as `version` instead.',
    }),
    ApiConflictResponse({
      description:
        'Somebody else changed the row meanwhile; nothing is saved. `current` is the row as it is now, `yours` what was sent.',
    }),
  );
