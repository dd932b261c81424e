import { addDays, type PlainDate } from '../calendar/plain-date.js';
import type { FieldProblem } from '../problems/field-problem.js';
import { AWAITED_DAYS } from './awaited.js';

interface Moved {
  readonly to: unknown;
  /** The day on which they were to come until now. */
  readonly from: PlainDate;
  readonly today: PlainDate;
}

/**
 * Birds that nobody has told to be there come today or later; some days back only as long as it is
 * still asked whether they came. Of birds that were to come before that, any day can be typed.
 *
 * @returns the problem of a day further back
 */
export function cameTooEarly({ to, from, today }: Moved): FieldProblem | undefined {
  const min = addDays(today, -AWAITED_DAYS);
  if (from < min || to === from || typeof to !== 'string' || min <= to) return undefined;
  return {
    field: 'arrivalDate',
    code: 'out-of-bounds',
    given: to,
    min,
    fix: 'They are not told to be there yet: give the day they will come. If they came long ago, tell that they came first.',
  };
}
