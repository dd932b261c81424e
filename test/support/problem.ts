import { expect } from '@jest/globals';
import type { Response } from 'supertest';
import type { FieldProblem } from '../../shared/problems/field-problem.js';
import type { ProblemDocument } from '../../src/common/problem.filter.js';

/** What a problem must at least say; a matcher may stand for any part. */
export type ProblemPattern = Partial<Record<keyof FieldProblem, unknown>>;

/** Looks at the whole of a problem document (RFC 9457), and returns it. */
export function expectProblem(response: Response, status: number): ProblemDocument {
  const document = response.body as ProblemDocument;
  expect({ status: response.status, body: document }).toMatchObject({ status });
  expect(response.headers['content-type']).toMatch(/^application\/problem\+json\b/);
  const { pathname, search } = new URL(
    (response as unknown as { request: { url: string } }).request.url,
  );
  expect(document).toMatchObject({
    type: expect.stringMatching(/^(about:blank|urn:broodfold:problem:[a-z]+)$/),
    title: expect.stringMatching(/\S/),
    status,
    detail: expect.stringMatching(/\S/),
    instance: `${pathname}${search}`,
  });
  return document;
}

/** A 400 whose first problem is the expected one, with something to do about it. */
export function expectFieldProblem(response: Response, expected: ProblemPattern): void {
  const document = expectProblem(response, 400);
  const first = document.problems?.[0];
  expect(first).toMatchObject(expected);
  expect(first?.fix).toMatch(/\S/);
  expect(first?.text).toContain(first?.field);
  expect(first).toHaveProperty('given');
  if (first?.code === 'out-of-bounds') expect(first.min ?? first.max).toBeDefined();
  if (first?.code === 'not-allowed') expect(first.allowed).toBeDefined();
  expect(document.detail).toContain(first?.field);
}
