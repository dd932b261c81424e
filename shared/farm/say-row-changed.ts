import type { Reader } from '../units/format.js';
import { fieldAt, unitAt } from './field-at.js';
import { isSame } from './merge-row.js';
import { ROWS_OF_RECORD, type ChangedField, type RowChanged } from './row-changed.js';
import { sayValue, type ValueWords } from './say-value.js';

/** What became of a row, field by field: what it is now, and what it was before. */
export function sayRowChanged(
  { of, how, fields = [] }: RowChanged,
  reader: Reader,
  nameOf: (id: string) => string | undefined,
): string {
  const described = ROWS_OF_RECORD[of];
  const words: ValueWords = {
    labelOf: (field) => fieldAt(described, field)?.field.label,
    unitOf: (field) => unitAt(described, field),
    nameOf,
    reader,
  };
  if (how === 'changed') return fields.map((each) => sayField(each, words)).join('; ');
  if (of !== 'hand-over') return [how, ...wasSaid(fields, words)].join('; ');
  const values = fields.map(({ field, before, after }) => [field, after ?? before] as const);
  const what = IN_CHARGE[how];
  return 0 < values.length ? `${what}, ${sayValue('', Object.fromEntries(values), words)}` : what;
}

/** Fields of a row that is gone that are said; all of them are kept. */
const MOST_SAID = 8;

function wasSaid(fields: readonly ChangedField[], words: ValueWords): string[] {
  // Its name stands before it.
  const there = fields.filter(
    ({ field, before }) =>
      before !== undefined && before !== false && !['name', 'kind'].includes(field),
  );
  const said = there
    .slice(0, MOST_SAID)
    .map(
      ({ field, before }) =>
        `${lower(words.labelOf(field) ?? field)} ${sayValue(field, before, words)}`,
    );
  const more = there.length - said.length;
  return 0 < more ? [...said, `and ${more} more`] : said;
}

const lower = (label: string): string => label.charAt(0).toLowerCase() + label.slice(1);

const IN_CHARGE = { added: 'put in charge', deleted: 'not in charge any more' } as const;

function sayField({ field, before, after }: ChangedField, words: ValueWords): string {
  const said = lower(words.labelOf(field) ?? field);
  if (before === undefined && after === undefined) return `${said} changed`;
  if (isList(before) || isList(after))
    return `${said} ${entriesSaid(field, isList(before) ? before : [], isList(after) ? after : [], words)}`;
  return `${said} ${sayValue(field, after, words)}, before ${sayValue(field, before, words)}`;
}

/** Days away, days shut: what came in and what was taken out, never the whole list. */
const isList = (value: unknown): value is readonly object[] =>
  Array.isArray(value) && value.every((each) => typeof each === 'object');

function entriesSaid(
  field: string,
  before: readonly object[],
  after: readonly object[],
  words: ValueWords,
): string {
  const notIn = (list: readonly object[]) => (each: object) =>
    !list.some((other) => isSame(other, each));
  const say = (each: object): string => sayValue(`${field}.0`, each, words);
  return [
    ...after.filter(notIn(before)).map(say),
    ...before.filter(notIn(after)).map((each) => `no longer ${say(each)}`),
  ].join(', ');
}
