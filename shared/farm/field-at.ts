import type { Unit } from '../units/unit.js';
import type { Field, RowDescription } from './field.js';

/** A field that a path leads to, and what is printed at it. */
export interface FieldAt {
  readonly field: Field;
  readonly label: string;
}

/**
 * The field that a path such as `walls.layers.2.thicknessMm` leads to.
 *
 */
export function fieldAt(described: RowDescription, path: string): FieldAt | undefined {
  const [name = '', ...rest] = path.split('.');
  const field = Object.hasOwn(described.fields, name) ? described.fields[name] : undefined;
  return field && within(field, rest);
}

function within(field: Field, [name, ...rest]: readonly string[]): FieldAt | undefined {
  if (name === undefined) return { field, label: field.label };
  switch (field.kind) {
    case 'list': {
      const entry = field.labelOfEntry?.(Number(name));
      if (rest.length === 0) return { field: field.of, label: capital(entry) ?? field.label };
      const inner = within(field.of, rest);
      return inner && named(inner, entry);
    }
    case 'record':
      return within(field.of, rest);
    case 'row': {
      const inner = fieldAt(field.row, [name, ...rest].join('.'));
      return inner && named(inner, field.called && `the ${field.called}`);
    }
    default:
      return undefined;
  }
}

const named = (at: FieldAt, whose: string | undefined): FieldAt =>
  whose === undefined ? at : { ...at, label: `${at.label} of ${whose}` };

const capital = (words: string | undefined): string | undefined =>
  words && `${words[0]!.toUpperCase()}${words.slice(1)}`;

/** What is printed at the field that a path leads to; undefined where there is no such field. */
export const labelAt = (described: RowDescription, path: string): string | undefined =>
  fieldAt(described, path)?.label;

/** The unit in which people are shown the number that a path leads to. */
export function unitAt(described: RowDescription, path: string): Unit | undefined {
  const field = fieldAt(described, path)?.field;
  return field?.kind === 'number' ? field.bounds.unit : undefined;
}
