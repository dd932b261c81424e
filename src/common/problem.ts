import type { ValidationError } from 'class-validator';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import { DESCRIBED, type Finding } from './dto-of.js';

/** class-validator's findings as field problems, with the full path of each field. */
export function problemsOf(errors: readonly ValidationError[], path = ''): FieldProblem[] {
  const at = path === '' ? '' : `${path}.`;
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
            fix: 'Remove the field or check its spelling.',
          },
        ];
  });
}

export const fieldErrorOf = (errors: readonly ValidationError[], path = ''): FieldError =>
  new FieldError(problemsOf(errors, path));
