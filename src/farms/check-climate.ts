import { problemsOfMonths } from '../../shared/farm/months.js';
import { FieldError } from '../../shared/problems/field-problem.js';

/** Throws when a month's mean low is above its mean high. */
export function checkClimate(minC: readonly number[], maxC: readonly number[], path = ''): void {
  const problems = problemsOfMonths(minC, maxC, path);
  if (0 < problems.length) throw new FieldError(problems);
}
