import { isPlainDate } from '../../../shared/calendar/plain-date.js';
import { BOUNDS, type BoundName } from '../../../shared/farm/bounds.js';
import { formatDate, formatTyped } from '../../../shared/units/format.js';
import type { Unit } from '../../../shared/units/unit.js';
import { seenName } from './seen-rows.js';
import type { FormWords } from '../../../shared/problems/field-problem.js';

/** The value of a field in a few words, in the farm's units, for a form that has no input for it. */
export function sayValue(field: string, value: unknown, words: FormWords): string {
  if (value === undefined || value === null || value === '') return 'nothing';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return formatTyped(value, unitOf(field), words.reader);
  if (typeof value === 'string') {
    return isPlainDate(value) ? formatDate(value) : (seenName(value) ?? value);
  }
  const within = (inner: unknown): string => sayValue(field, inner, words);
  if (Array.isArray(value)) return value.length === 0 ? 'nothing' : value.map(within).join('; ');
  return Object.entries(value)
    .map(([name, inner]) => sayValue(`${field}.${name}`, inner, words))
    .join(', ');
}

/** Endings of names that say the unit; names of bounds say it as well. */
const ENDINGS: readonly (readonly [RegExp, Unit])[] = [
  [/^areaM2$/, 'ha'],
  [/M2$/, 'm2'],
  [/(Kg|KgPerDay)$/, 'kg'],
  [/Cm$/, 'cm'],
  [/Mm$/, 'mm'],
  [/M$/, 'm'],
  [/C$/, 'degC'],
  [/W$/, 'W'],
  [/L$/, 'L'],
  [/[hH]ours/, 'h'],
  [/Days$/, 'day'],
];

function unitOf(field: string): Unit {
  const name = field.split('.').findLast((each) => !/^\d+$/.test(each)) ?? field;
  if (Object.hasOwn(BOUNDS, name)) return BOUNDS[name as BoundName].unit;
  return ENDINGS.find(([ending]) => ending.test(name))?.[1] ?? 'count';
}
