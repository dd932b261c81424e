import { addDays, type PlainDate } from '../calendar/plain-date.js';
import type { FieldProblem } from '../problems/field-problem.js';
import { whole } from './bounds.js';
import { number, optional, row, text, yesNo, type RowOf } from './field.js';
import { date, id } from './words.js';

/** Longer than any label asks. Judgement, no source. */
const MOST_WAIT_DAYS = 400;

const waitDays = (label: string) =>
  number(
    label,
    whole(
      0,
      MOST_WAIT_DAYS,
      'day',
      'Read the days on the label, hours as whole days: 36 hours are 2. Where the label asks for none, type 0.',
    ),
  );

/** A medicine that was given, with the days to wait as its label or the veterinarian says. */
export const treatedFields = row('Treated', {
  product: text('Medicine, as its label names it'),
  cowId: optional(id('Which cow')),
  /** Left out, all of them. */
  head: optional(
    number('How many, if not all', whole(1, 20_000, 'count', 'Count those that got it.')),
  ),
  meatDays: waitDays('Days before meat, from the label'),
  milkDays: optional(waitDays('Days before milk, from the label')),
  eggDays: optional(waitDays('Days before eggs, from the label')),
});
export type Treated = RowOf<typeof treatedFields>;

/** A medicine that was given to a batch or a herd on a day. */
export const treatmentFields = row('Treatment', {
  id: optional(id()),
  about: id('Batch or herd'),
  date: date('Day'),
  /** Nobody named the cow: she was in the herd then, and has left it since. */
  wentAlong: optional(yesNo('Goes with a cow of the treated herd')),
  ...treatedFields.fields,
});
export type Treatment = RowOf<typeof treatmentFields>;

/** What of an animal is kept out while a medicine may still be in it. */
export type KeptOut = 'meat' | 'milk' | 'eggs';

/** Where a label's days of each are told. */
export const DAYS_OF = { meat: 'meatDays', milk: 'milkDays', eggs: 'eggDays' } as const;

/**
 * The last day on which something of a treated animal is kept out. Each day of a label is 24 hours
 * from the last dose, and the hour of that is not told: all of the last day is waited for.
 *
 * @returns undefined where the label asks for no wait, or the days of it were not told
 */
export function keptOutUntil(
  treatment: Pick<Treatment, 'date' | 'meatDays' | 'milkDays' | 'eggDays'>,
  what: KeptOut,
): PlainDate | undefined {
  const days = treatment[DAYS_OF[what]];
  return days === undefined || days === 0 ? undefined : addDays(treatment.date, days);
}

/** Whether something of an animal is kept out on a day. */
export function isKeptOut(treatment: Treatment, what: KeptOut, on: PlainDate): boolean {
  const until = keptOutUntil(treatment, what);
  return until !== undefined && treatment.date <= on && on <= until;
}

/** What is wrong with what is told of a medicine by itself. */
export function treatedProblems(
  { cowId, head, milkDays, eggDays }: Partial<Treated>,
  isOfBirds: boolean,
): FieldProblem[] {
  const conflict = (field: string, given: unknown, fix: string): FieldProblem[] =>
    given === undefined ? [] : [{ field: `details.${field}`, code: 'conflict', given, fix }];
  return [
    ...(isOfBirds
      ? [
          ...conflict('milkDays', milkDays, 'Birds give no milk: leave it out.'),
          ...conflict('cowId', cowId, 'These are birds: leave the cow out.'),
        ]
      : conflict('eggDays', eggDays, 'Cattle lay no eggs: leave it out.')),
    ...(cowId !== undefined && head !== undefined && head !== 1
      ? [
          {
            ...{ field: 'details.head', code: 'out-of-bounds' as const, given: head },
            ...{ min: 1, max: 1, fix: 'One cow was named: tell the others by themselves.' },
          },
        ]
      : []),
  ];
}
