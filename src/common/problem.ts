import type { ValidationError } from 'class-validator';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import { DESCRIBED, type Finding } from './dto-of.js';

/** Unknown fields that are named one by one; of more only the number is said. */
const MOST_UNKNOWN = 20;

/** class-validator's findings as field problems, with the full path of each field. */
export function problemsOf(errors: readonly ValidationError[], path = ''): FieldProblem[] {
  const all = eachProblem(errors, path === '' ? '' : `${path}.`);
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

const UNKNOWN_FIX = 'Remove the field or check its spelling.';

function eachProblem(errors: readonly ValidationError[], at: string): FieldProblem[] {
  return errors.flatMap((error): readonly FieldProblem[] => {
    const finding = error.contexts?.[DESCRIBED] as Finding | undefined;
    return finding && error.target
      ? finding.problemsIn(error.target, at)
      : [
          {
            field: `${at}${error.property}`,
            code: 'not-allowed',
            given: error.value as unknown,
            allowed: [],
            fix: UNKNOWN_FIX,
          },
        ];
  });
}

export const fieldErrorOf = (errors: readonly ValidationError[], path = ''): FieldError =>
  new FieldError(problemsOf(errors, path));
