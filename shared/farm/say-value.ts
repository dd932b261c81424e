import { isPlainDate } from '../calendar/plain-date.js';
import { formatDate } from '../units/dates.js';
import { formatTyped, type Reader } from '../units/format.js';
import type { Unit } from '../units/unit.js';

/** What says a value: labels and units of its fields, and what things are called by their id. */
export interface ValueWords {
  readonly labelOf: (field: string) => string | undefined;
  readonly unitOf: (field: string) => Unit | undefined;
  readonly nameOf: (id: string) => string | undefined;
  readonly reader: Reader;
}

/** The value of a field in a few words, in the farm's units. */
export function sayValue(field: string, value: unknown, words: ValueWords): string {
  if (value === undefined || value === null || value === '') return 'nothing';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number')
    return formatTyped(value, words.unitOf(field) ?? 'count', words.reader);
  if (typeof value === 'string') {
    return isPlainDate(value) ? formatDate(value, words.reader) : (words.nameOf(value) ?? value);
  }
  if (Array.isArray(value)) {
    const entries = value.map((each, k) =>
      sayValue(typeof each === 'object' ? `${field}.${k}` : field, each, words),
    );
    return entries.length === 0 ? 'nothing' : entries.join('; ');
  }
  return sayParts(field, value, words);
}

/** Parts of a value: days from and to are said as one, and what is not so not at all. */
function sayParts(field: string, value: object, words: ValueWords): string {
  const { from, to, ...rest } = value as Readonly<Record<string, unknown>>;
  const areDays = isPlainDate(from) && isPlainDate(to);
  const days = areDays
    ? [`${formatDate(from, words.reader)} to ${formatDate(to, words.reader)}`]
    : [];
  const parts = Object.entries(areDays ? rest : value)
    .filter(([, inner]) => inner !== undefined && inner !== false)
    .map(([name, inner]) => {
      const at = `${field}.${name}`;
      return inner === true
        ? (words.labelOf(at) ?? name).toLowerCase()
        : sayValue(at, inner, words);
    });
  return [...days, ...parts].join(', ');
}
