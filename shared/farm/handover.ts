import { daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { FieldProblem } from '../problems/field-problem.js';
import { DAY_HOURS } from './bounds.js';
import {
  list,
  longText,
  number,
  optional,
  row,
  rows,
  text,
  type RowOf,
  type RowRule,
  type SavedRowOf,
} from './field.js';
import { date, id, OWN } from './words.js';

export const phoneNumberFields = row('PhoneNumber', { who: text('Who'), number: text('Number') });
export type PhoneNumber = RowOf<typeof phoneNumberFields>;

export const whereaboutFields = row('Whereabout', { what: text('What'), where: text('Where') });
export type Whereabout = RowOf<typeof whereaboutFields>;

/** A sheet of a page a day is of no use for longer. */
export const MOST_DAYS = 31;

const RULES: readonly RowRule<{
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly personId?: string;
  readonly sitter?: string;
  readonly hoursPerDay?: number;
}>[] = [
  {
    name: 'to-after-from',
    of: ['to', 'from'],
    find: ({ from, to }, at) =>
      to < from
        ? [lastDay(at, to, { min: from }, 'The last day comes before the first: swap the two.')]
        : [],
  },
  {
    name: 'a-month-at-most',
    of: ['to', 'from'],
    find: ({ from, to }, at) => {
      const days = daysBetween(from, to) + 1;
      const fix = 'Hand over a month at most; make another sheet for what comes after.';
      return MOST_DAYS < days ? [lastDay(at, days, { max: MOST_DAYS, unit: 'days' }, fix)] : [];
    },
  },
  {
    name: 'somebody-is-in-charge',
    of: ['sitter', 'personId'],
    find: ({ personId, sitter }, at) =>
      personId === undefined && sitter === undefined
        ? [
            {
              field: `${at}sitter`,
              code: 'missing',
              given: undefined,
              fix: 'Choose one of the people of the farm, or give the name of who comes in.',
            },
          ]
        : [],
  },
  {
    name: 'who-comes-in-has-hours',
    of: ['hoursPerDay', 'personId'],
    find: ({ personId, hoursPerDay }, at) =>
      personId === undefined && hoursPerDay === undefined
        ? [
            {
              field: `${at}hoursPerDay`,
              code: 'missing',
              given: undefined,
              ...{ min: DAY_HOURS.min, max: DAY_HOURS.max, unit: 'h' },
              fix: 'Say how many hours a day who comes in has for it.',
            },
          ]
        : [],
  },
];

const lastDay = (
  at: string,
  given: unknown,
  bound: Pick<FieldProblem, 'min' | 'max' | 'unit'>,
  fix: string,
): FieldProblem => ({ field: `${at}to`, code: 'out-of-bounds', given, ...bound, fix });

/** Days on which one person does what cannot wait, because others are away. */
export const handoverFields = row(
  'Handover',
  {
    ...OWN,
    /** The sitter: one of the household, or somebody who comes in. */
    personId: optional(id('Who is in charge')),
    sitter: optional(text('Name of who comes in')),
    from: date('First day'),
    to: date('Last day'),
    /** Left out of one of the household, who keeps the hours of their own. */
    hoursPerDay: optional(number('Hours they have each day', DAY_HOURS)),
    /** Who of the household is away; the others keep their hours. Left out, all but who is in charge. */
    awayIds: optional(list('Who is away', id('Person'), 20, 'people')),
    /** Batches and herds in the order in which one walks past them; others follow. */
    roundOrder: list('Order of the round', id('Stop'), 200, 'ids'),
    phones: rows('Phone numbers', phoneNumberFields, 20, 'phone number'),
    whereabouts: rows('Where things are', whereaboutFields, 40, 'thing'),
    notes: optional(longText('Anything else')),
  },
  RULES,
);
export type Handover = SavedRowOf<typeof handoverFields>;
