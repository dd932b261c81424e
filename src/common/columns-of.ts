import { Column, type ColumnOptions } from 'typeorm';
import type { Field, Fields, RowDescription, ValuesOf, WordForm } from '../../shared/farm/field.js';
import { OWN } from '../../shared/farm/words.js';
import type { Sent } from './dto-of.js';

/** What columns hold of described fields: null where a field is left out. */
type Columns<F extends Fields> = Omit<
  {
    [K in keyof Sent<ValuesOf<F>>]: F[K & keyof F] extends { readonly isOptional: true }
      ? Sent<ValuesOf<F>>[K] | null
      : Sent<ValuesOf<F>>[K];
  },
  keyof typeof OWN
>;

/**
 * The class of an entity with a column for every field of a description but those that every row
 * has, which its entity or `base` says. A new field asks for nothing here, only for its migration.
 */
export function columnsOf<F extends Fields, B extends object = object>(
  described: RowDescription<F>,
  base: new () => B = Object as never,
): new () => Columns<F> & B {
  const made = class extends (base as new () => object) {};
  for (const [name, field] of columnFields(described)) {
    Column({ ...typeOf(field), nullable: field.isOptional ?? false })(made.prototype, name);
  }
  return made as never;
}

/** A row as its columns take it: null for what is left out, so that it is emptied when saved. */
export const toColumns = <F extends Fields>(
  described: RowDescription<F>,
  row: object,
): Columns<F> =>
  Object.fromEntries(
    columnFields(described).map(([name]) => [name, (row as Record<string, unknown>)[name] ?? null]),
  ) as never;

/** What columns hold as a row: without the fields that are empty, and without other columns. */
export const fromColumns = <F extends Fields>(
  { fields }: RowDescription<F>,
  columns: object,
): ValuesOf<F> =>
  Object.fromEntries(
    Object.keys(fields).flatMap((name) => {
      const value = (columns as Record<string, unknown>)[name];
      return value === null || value === undefined ? [] : [[name, value]];
    }),
  ) as never;

const columnFields = ({ fields }: RowDescription): [string, Field][] =>
  Object.entries(fields).filter(([name]) => !(name in OWN));

const LENGTHS: Partial<Record<WordForm['name'], number>> = {
  'month-day': 5,
  country: 2,
  region: 8,
  currency: 3,
  price: 20,
  id: 64,
  'time-zone': 64,
  'work-key': 200,
};

function typeOf(field: Field): ColumnOptions {
  switch (field.kind) {
    case 'text':
      return { type: 'varchar', length: field.most };
    case 'number':
      return { type: field.bounds.integer ? 'integer' : 'double precision' };
    case 'yes-no':
      return { type: 'boolean' };
    case 'choice':
      return {
        type: 'varchar',
        length: Math.max(8, ...field.allowed.map((each) => each.length)),
      };
    case 'word':
      return field.word.name === 'date'
        ? { type: 'date' }
        : { type: 'varchar', length: LENGTHS[field.word.name]! };
    default:
      return { type: 'simple-json' };
  }
}
