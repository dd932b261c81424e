import { within } from '../farm/bounds.js';
import { choice, number, record, row, rows, word, type RowOf } from '../farm/field.js';
import { ID, MARK, maybe, NAME, rowOf, WORDS } from '../tables/figures.js';
import { SHOWN, type Unit } from '../units/unit.js';

const UNITS = Object.keys(SHOWN) as readonly Unit[];
const ANY = within(-1e7, 1e7, 'ratio', 'Check the figure and its unit against the source.');

/** A number or a word that a value is for: a day of age, a strain of the tables. */
const GIVEN = word<number | string>('Given', {
  name: 'of-tables',
  holds: (value) =>
    typeof value === 'number'
      ? Number.isFinite(value)
      : typeof value === 'string' && /^\S.{0,79}$/.test(value),
  wrong: {
    code: 'not-allowed',
    allowed: ['a number', 'up to 80 characters'],
    fix: 'Write what the value is for.',
  },
  schema: { example: '42' },
});

/** A value from outside that something the program computes is held against. */
export const checkFields = row(
  'Check',
  {
    id: ID,
    /** What is compared, said so that it can be read by itself. */
    what: NAME,
    source: rowOf('sources'),
    /** Page, table or paragraph of the source. */
    where: NAME,
    mark: MARK,
    /** Their value, in the stored unit. */
    theirs: number('Their value', ANY),
    unit: choice('Unit', UNITS),
    /** As the source prints it, where that is another unit or a range. */
    printed: maybe(NAME),
    /** The computation of the topic's code that gives ours. */
    by: ID,
    /** What it is computed for. */
    given: maybe(record('Given', GIVEN, 20)),
    allowedShare: maybe(number('Allowed share', within(0, 1, 'share', 'Give a share of theirs.'))),
    allowedAmount: maybe(number('Allowed amount', ANY)),
    /** Why so much is allowed. */
    why: WORDS,
    /** Why ours lies beyond what is allowed: it is shown as disagreeing all the same. */
    disagreement: maybe(WORDS),
  },
  [
    {
      name: 'one-allowance',
      of: ['allowedShare', 'allowedAmount'],
      find: ({ allowedShare, allowedAmount }, at) =>
        (allowedShare === undefined) === (allowedAmount === undefined)
          ? [
              {
                field: `${at}allowedShare`,
                code: 'not-allowed',
                given: allowedShare,
                allowed: ['allowedShare', 'allowedAmount'],
                fix: 'Give one of the two: a share of their value, or an amount.',
              },
            ]
          : [],
    },
  ],
);
export type CheckRow = RowOf<typeof checkFields>;

/** The rows of one topic, as a file of `seeds/checks/` holds them. */
export const checkRows = rows('Checks', checkFields, 500, 'check');
