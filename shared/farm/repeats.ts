import type { FieldProblem } from '../problems/field-problem.js';
import { whole } from './bounds.js';
import { choice, list, nested, number, optional, row, type RowOf, type RowRule } from './field.js';
import { tiedToFields } from './tied-to.js';
import { date } from './words.js';

const NEEDS: readonly RowRule<{
  readonly every: string;
  readonly weekdays?: readonly number[];
  readonly everyDays?: number;
}>[] = [
  {
    name: 'weekdays-are-given',
    of: ['weekdays', 'every'],
    find: ({ every, weekdays = [] }, at) =>
      every === 'weekdays' && weekdays.length === 0
        ? [missing(`${at}weekdays`, 'Choose the days of the week on which it comes.')]
        : [],
  },
  {
    name: 'days-are-given',
    of: ['everyDays', 'every'],
    find: ({ every, everyDays }, at) =>
      every === 'days' && everyDays === undefined
        ? [missing(`${at}everyDays`, 'Give after how many days it comes again.')]
        : [],
  },
];

const missing = (field: string, fix: string): FieldProblem => ({
  field,
  code: 'missing',
  given: undefined,
  fix,
});

/** How work comes again: every day, on days of the week, or every so many days. */
export const repeatFields = row(
  'Repeats',
  {
    every: choice('Repeats', ['day', 'weekdays', 'days']),
    /** 1 is Monday. */
    weekdays: optional(
      list(
        'Days of the week',
        number('Day of the week', whole(1, 7, 'count', 'Monday is 1.')),
        7,
        'numbers',
      ),
    ),
    everyDays: optional(
      number(
        'Every so many days',
        whole(2, 366, 'day', 'Give after how many days it comes again.'),
      ),
    ),
    /** The last day it may come on; left out, it goes on. */
    until: optional(date('Until')),
    /** An event that its last day moves along with. */
    untilTiedTo: optional(nested('Until tied to', tiedToFields)),
  },
  NEEDS,
);
export type Repeats = RowOf<typeof repeatFields>;
