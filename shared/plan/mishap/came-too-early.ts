import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import type { FieldProblem } from '../../problems/field-problem.js';
import { AWAITED_DAYS } from '../awaited.js';

/**
 * Birds that nobody has told to be there come today or later; some days back only as long as it is
 * still asked whether they came.
 *
 * @returns the problem of a day further back
 */
export function cameTooEarly(arrivalDate: unknown, today: PlainDate): FieldProblem | undefined {
  const min = addDays(today, -AWAITED_DAYS);
  if (typeof arrivalDate !== 'string' || min <= arrivalDate) return undefined;
  return {
    field: 'arrivalDate',
    code: 'out-of-bounds',
    given: arrivalDate,
    min,
    fix: 'They are not told to be there yet: give the day they will come. If they came long ago, tell that they came first.',
  };
}
