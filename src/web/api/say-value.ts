import { isPlainDate } from '../../../shared/calendar/plain-date.js';
import { formatDate } from '../../../shared/units/dates.js';
import { formatTyped } from '../../../shared/units/format.js';
import { seenName } from './seen-rows.js';
import type { FormWords } from '../../../shared/problems/field-problem.js';

/** The value of a field in a few words, in the farm's units, for a form that has no input for it. */
export function sayValue(field: string, value: unknown, words: FormWords): string {
  if (value === undefined || value === null || value === '') return 'nothing';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number')
    return formatTyped(value, words.unitOf?.(field) ?? 'count', words.reader);
  if (typeof value === 'string') {
    return isPlainDate(value) ? formatDate(value, words.reader) : (seenName(value) ?? value);
  }
  const within = (inner: unknown): string => sayValue(field, inner, words);
  if (Array.isArray(value)) return value.length === 0 ? 'nothing' : value.map(within).join('; ');
  return Object.entries(value)
    .map(([name, inner]) => sayValue(`${field}.${name}`, inner, words))
    .join(', ');
}
