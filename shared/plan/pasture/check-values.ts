import { isPlainDate, type PlainDate } from '../../calendar/plain-date.js';
import type { FieldProblem } from '../../problems/field-problem.js';

/** What is said to have happened must lie behind us. */
export const later = (
  today: PlainDate,
  field: string,
  date: PlainDate | undefined,
): FieldProblem[] =>
  date === undefined || !isPlainDate(date) || date <= today
    ? []
    : [
        {
          field,
          code: 'out-of-bounds',
          given: date,
          max: today,
          fix: 'This has not happened yet. Give the day on which it did, or leave it out.',
        },
      ];

/** Ids of rows, for what may name one of them. */
export const ids = (rows: readonly { id: string }[]): string[] => rows.map((row) => row.id);

/** Refuses what is not among the ids there are. */
export function oneOf(field: string, value: unknown, allowed: readonly string[]): FieldProblem[] {
  return typeof value === 'string' && allowed.includes(value)
    ? []
    : [{ field, code: 'not-allowed', given: value, allowed, fix: 'Choose one of these.' }];
}
