import { MARK_MEANING, type Mark } from '../explain/formula.js';
import { CLOCK_H, within } from '../farm/bounds.js';
import {
  choice,
  list,
  nested,
  number,
  optional,
  row,
  rows,
  text,
  word,
  yesNo,
  type Fields,
  type RowRule,
  type ValuesOf,
  type WordForm,
} from '../farm/field.js';
import type { Unit } from '../units/unit.js';

/*
 * What the fields of published tables may hold. The bounds are those of the quantity, wide enough
 * for any table and narrow enough for a slip of the unit or the decimal point to stand out.
 */

const figure = (min: number, max: number, unit: Unit = 'ratio') =>
  number('Figure', within(min, max, unit, 'Check the figure and its unit against the source.'));

export const CLOCK = number('Hour of the clock', CLOCK_H);
export const KG = figure(0, 2000, 'kg');
export const KG_A_HA = figure(0, 20_000, 'kgPerHa');
export const GRAMS = figure(20, 120, 'g');
export const DAYS = figure(0, 400, 'day');
/** Days ahead of a plan. */
export const AHEAD_DAYS = figure(0, 1000, 'day');
export const OFFSET_DAYS = figure(-400, 400, 'day');
export const WEEKS = figure(0, 120);
export const HOURS = figure(0, 48, 'h');
export const AIR_C = figure(-40, 60, 'degC');
export const KELVIN = figure(0, 30, 'K');
export const M2 = figure(0.001, 20, 'm2');
export const M = figure(0, 1000, 'm');
export const CM = figure(0, 300, 'cm');
export const MM = figure(0, 1000, 'mm');
export const LITERS = figure(0, 500, 'L');
export const ML = figure(0, 2000, 'mL');
export const SHARE = figure(0, 2, 'share');
export const DIFFERENCE = figure(-1, 1, 'share');
export const PERCENT = figure(0, 130);
export const FACTOR = figure(0, 10);
export const COUNT = figure(0, 1000, 'count');
export const POINTS = figure(0, 10_000);
export const KCAL = figure(2000, 4000, 'kcal');
/** Oil holds most; salt none. */
export const KCAL_OF_INGREDIENT = figure(0, 10_000, 'kcal');
export const PER_KG = figure(0, 0.1);
export const WATTS = figure(0, 2000, 'W');
export const R_VALUE = figure(0, 100);
export const INDEX = figure(40, 120);
export const SIGNED = figure(-10_000, 10_000);
export const COEFFICIENT = figure(0, 100);
export const KJ_PER_KG = figure(0, 1000);

/** A word or sentence of a table. */
export const WORDS = text('Words', 1000);
export const NAME = text('Name', 200);
export const YES_NO = yesNo('Yes or no');
export const maybe = optional;

/** Ids of rows, which tables write with dots as well. */
const ID_FORM: WordForm = {
  name: 'of-tables',
  holds: (value) => typeof value === 'string' && /^[A-Za-z0-9_.-]{1,80}$/.test(value),
  wrong: {
    code: 'not-allowed',
    allowed: ['letters, digits, dots, dashes and low lines, 1 to 80'],
    fix: 'Write an id.',
  },
  schema: { example: 'fast-meat' },
};

export const ID = word('Id', ID_FORM);

/** The id of a row of another table, by its name, or of a list within it. */
export const rowOf = (table: string) => word('Id', { ...ID_FORM, refersTo: table });

const MARKS = Object.keys(MARK_MEANING) as readonly Mark[];
export const MARK = choice('Mark', MARKS);
export const SOURCES = list('Sources', rowOf('sources'), 20, 'ids', 1);

/** A day of age, or the first egg. */
export const DAY_OR_FIRST_EGG = word<number | 'first-egg'>('Day', {
  name: 'of-tables',
  holds: (value) =>
    value === 'first-egg' || (typeof value === 'number' && 0 <= value && value <= 400),
  wrong: { code: 'not-allowed', allowed: ['0 to 400', 'first-egg'], fix: 'Write a day of age.' },
  schema: { example: '21' },
});

/** Text that a source may not have, such as an address. */
export const MAY_BE_EMPTY = word('Text', {
  name: 'of-tables',
  holds: (value) => typeof value === 'string' && value.length <= 500,
  wrong: { code: 'not-allowed', allowed: ['up to 500 characters'], fix: 'Write it, or "".' },
  schema: { example: '2020' },
});

/** Where a value comes from and how well it is supported. */
export const SOURCED = { sources: SOURCES, mark: MARK } as const satisfies Fields;
/** The spread of a value, and why it spreads. */
export const RANGED = { because: optional(WORDS) } as const satisfies Fields;

/** A part of a table with its own sources and mark. */
export const part = <F extends Fields>(name: string, fields: F) =>
  nested(name, row(name, { ...fields, ...SOURCED }));

/** A list of rows. */
export const table = <const F extends Fields>(
  name: string,
  fields: F,
  rules: readonly RowRule<ValuesOf<F>>[] = [],
) => rows(name, row(name, fields, rules), 500, 'row');

/** One value with its sources and mark. */
export const value = <F extends Fields[string]>(name: string, of: F) => part(name, { value: of });

/** One value with its spread. */
export const spread = <F extends Fields[string]>(name: string, of: F) =>
  part(name, { value: of, low: of, high: of, ...RANGED });
