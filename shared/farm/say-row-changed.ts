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
  const values = fields.map(({ field, before, after }) => [field, after ?? before] as const);
  if (how === 'changed') return fields.map((each) => sayField(each, words)).join('; ');
  const what = of === 'hand-over' ? IN_CHARGE[how] : how;
  return 0 < values.length ? `${what}, ${sayValue('', Object.fromEntries(values), words)}` : what;
}

const IN_CHARGE = { added: 'put in charge', deleted: 'not in charge any more' } as const;

function sayField({ field, before, after }: ChangedField, words: ValueWords): string {
  const label = words.labelOf(field) ?? field;
  const said = label.charAt(0).toLowerCase() + label.slice(1);
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
