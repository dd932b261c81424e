import {
  describeForForm,
  FieldError,
  type FieldProblem,
  type FormWords,
} from '../../../shared/problems/field-problem.js';
import { ApiError } from '../api/client.js';

export { wordsOfRow } from '../api/row-words.js';

/** What is wrong, by field, in the words of the form. */
export function messagesByField(
  problems: readonly FieldProblem[],
  words: FormWords,
): Record<string, string> {
  return Object.fromEntries(
    // The first problem of a field is the one that is shown.
    [...problems].reverse().map((p) => [p.field, describeForForm(p, words, words.reader)]),
  );
}

/** The problems that an error carries, whether the service or the core found them. */
export const problemsIn = (error: unknown): readonly FieldProblem[] =>
  error instanceof ApiError
    ? (error.problem.problems ?? [])
    : error instanceof FieldError
      ? error.problems
      : [];

/** Numbers of a draft that were typed and could not be read; sent on, they would be left out. */
export function unreadNumbers(draft: unknown, field = ''): FieldProblem[] {
  if (Number.isNaN(draft)) {
    return [{ field, code: 'not-a-number', given: draft, fix: 'Write it such as 2.5.' }];
  }
  if (typeof draft !== 'object' || draft === null) return [];
  return Object.entries(draft).flatMap(([name, value]) =>
    unreadNumbers(value, field === '' ? name : `${field}.${name}`),
  );
}

/** Labels in a record, and those of list entries by a pattern such as `walls.layers.2.thicknessMm`. */
export const labelsFrom =
  (labels: Readonly<Record<string, string>>) =>
  (field: string): string | undefined =>
    Object.hasOwn(labels, field) ? labels[field] : undefined;
