import type { ValidationError } from 'class-validator';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import type { ProblemPart } from './field-rules.js';

/** Unknown fields that are named one by one; of more only the number is said. */
const MOST_UNKNOWN = 20;

/** class-validator's findings as field problems, with the full path of each field. */
export function problemsOf(errors: readonly ValidationError[], path = ''): FieldProblem[] {
  const all = eachProblem(errors, path);
  const unknown = all.filter(({ fix }) => fix === UNKNOWN_FIX);
  if (unknown.length <= MOST_UNKNOWN) return all;
  const unnamed = new Set(unknown.slice(MOST_UNKNOWN));
  const count: FieldProblem = {
    field: path || 'body',
    code: 'not-allowed',
    given: `an object with ${unknown.length} unknown fields`,
    allowed: [],
    fix: `${UNKNOWN_FIX} The first ${MOST_UNKNOWN} are named.`,
  };
  return [count, ...all.filter((problem) => !unnamed.has(problem))];
}

export const fieldErrorOf = (errors: readonly ValidationError[], path = ''): FieldError =>
  new FieldError(problemsOf(errors, path));

function eachProblem(errors: readonly ValidationError[], path: string): FieldProblem[] {
  return errors.flatMap((error) => {
    const field = path === '' ? error.property : `${path}.${error.property}`;
    // The rules of this house carry a context and say more than the library's own.
    const found = Object.entries(error.constraints ?? {});
    const first = found.find(([name]) => error.contexts?.[name] !== undefined) ?? found[0];
    const own = first ? [problemOf(field, error, first[0], first[1])] : [];
    return [...own, ...eachProblem(error.children ?? [], field)];
  });
}

const UNKNOWN_FIX = 'Remove the field or check its spelling.';

function problemOf(
  field: string,
  error: ValidationError,
  constraint: string,
  text: string,
): FieldProblem {
  const given: unknown = error.value;
  if (constraint === 'whitelistValidation') {
    return {
      field,
      code: 'not-allowed',
      given,
      allowed: [],
      fix: UNKNOWN_FIX,
    };
  }
  if (constraint === 'nestedList' && Array.isArray(given)) {
    const at = given.findIndex(
      (entry) => typeof entry !== 'object' || entry === null || Array.isArray(entry),
    );
    if (0 <= at) {
      return {
        field: `${field}.${at}`,
        code: 'not-allowed',
        given: given[at] as unknown,
        allowed: ['an object'],
        fix: 'Give this entry in braces.',
      };
    }
  }
  const part = error.contexts?.[constraint] as ProblemPart | undefined;
  if (given === undefined || given === null) {
    return { field, code: 'missing', given, fix: part?.fix ?? 'Give this field.' };
  }
  if (
    part?.code === 'out-of-bounds' &&
    part.unit !== 'characters' &&
    typeof given !== 'number' &&
    !Array.isArray(given)
  ) {
    return { field, code: 'not-a-number', given, fix: part.fix };
  }
  if (part) return { field, given, ...part };
  return {
    field,
    code: 'not-allowed',
    given,
    allowed: [text],
    fix: 'See the API document for its shape.',
  };
}
