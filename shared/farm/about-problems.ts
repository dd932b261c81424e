import { isPlainDate, type PlainDate } from '../calendar/plain-date.js';
import type { FieldProblem } from '../problems/field-problem.js';

/**
 * Whether text has the shape of a key of work: `own/`, `batch/` or `herd/`, an id, and for the last
 * two the work itself. Work of one's own that comes again has its date behind it. The batch may be
 * long gone: what was done for it is history.
 */
export const isWorkKey = (text: string): boolean =>
  /^(own\/[A-Za-z0-9-]{1,64}(\/\d{4}-\d\d-\d\d)?|(batch|herd)\/[A-Za-z0-9-]{1,64}\/[A-Za-z0-9/.-]{1,120})$/.test(
    text,
  );

export const notAKey = (given: string, field = 'about'): FieldProblem => ({
  field,
  code: 'not-allowed',
  given,
  allowed: ['own/ID', 'own/ID/DATE', 'batch/ID/WORK', 'herd/ID/WORK'],
  fix: 'Use the key as the plan of work gave it.',
});

export function dateProblem(
  field: string,
  given: unknown,
  max?: PlainDate,
  min?: PlainDate,
): FieldProblem[] {
  if (given === undefined) return [];
  if (!isPlainDate(given)) {
    return [{ field, code: 'not-a-date', given, fix: 'Write year-month-day, such as 2027-04-21.' }];
  }
  if (max !== undefined && max < given) {
    return [
      {
        field,
        code: 'out-of-bounds',
        given,
        max,
        fix: 'This has not happened yet: give the day on which it did.',
      },
    ];
  }
  return min !== undefined && given < min
    ? [{ field, code: 'out-of-bounds', given, min, fix: 'This is very long ago: check the year.' }]
    : [];
}

/** Off grass and into a paddock at once. */
export const offAndIn = (given: unknown): FieldProblem => ({
  field: 'details.paddockId',
  code: 'conflict',
  given,
  fix: 'They came off grass, or they went into a paddock: leave one of them out.',
});

/** A note without words needs a photo. */
export const emptyNote = ({ text, photos }: Readonly<Record<string, unknown>>): FieldProblem[] =>
  text !== undefined || (Array.isArray(photos) && 0 < photos.length)
    ? []
    : [
        {
          field: 'details.text',
          code: 'missing',
          given: text,
          fix: 'Write something, or add a photo.',
        },
      ];

export const among = (
  field: string,
  given: unknown,
  allowed: readonly string[],
  fix: string,
): FieldProblem[] =>
  typeof given === 'string' && allowed.includes(given)
    ? []
    : [{ field, code: given === undefined ? 'missing' : 'not-allowed', given, allowed, fix }];
