import { batchFields } from './batch.js';
import { cowFields } from './cow.js';
import { facilityFields } from './facility.js';
import { personFields } from './farm.js';
import { labelAt } from './field-at.js';
import type { RowDescription } from './field.js';
import { handoverFields } from './handover.js';
import { herdFields } from './herd.js';
import { jobFields } from './job.js';
import { isSame } from './merge-row.js';
import { paddockFields } from './paddock.js';
import { productFields } from './product.js';

/**
 * Rows whose changes are part of the record: who was there, what was shut, what came when, what there
 * was to work with. Gear and what is bought go by their kind.
 */
export const ROWS_OF_RECORD = {
  batch: batchFields,
  herd: herdFields,
  cow: cowFields,
  paddock: paddockFields,
  person: personFields,
  'hand-over': handoverFields,
  job: jobFields,
  ...facilityFields,
  ...productFields,
} satisfies Record<string, RowDescription>;
export type RowOfRecord = keyof typeof ROWS_OF_RECORD;

/** A field that was changed; both values are left out where they are too long to be read. */
export interface ChangedField {
  /** Its path within the row. */
  readonly field: string;
  readonly before?: unknown;
  readonly after?: unknown;
}

/** What became of a row that somebody typed. */
export interface RowChanged {
  readonly of: RowOfRecord;
  /** What it was called. */
  readonly name: string;
  readonly how: 'added' | 'changed' | 'deleted';
  readonly fields?: readonly ChangedField[];
}

/** What the program keeps beside what is typed. */
const NOT_TYPED: ReadonlySet<string> = new Set(['id', 'version', 'assumed']);

type Fields = Readonly<Record<string, unknown>>;

/** An outline of many corners, or a page of remarks: that it changed is all there is to read. */
const LONGEST_VALUE = 2000;

/** The fields in which two states of a row differ, each with its value before and after. */
export const changedFields = (of: RowOfRecord, before: Fields, after: Fields): ChangedField[] =>
  differences(before, after, '').filter(
    ({ field }) =>
      !NOT_TYPED.has(field.split('.')[0]!) && labelAt(ROWS_OF_RECORD[of], field) !== undefined,
  );

function differences(before: Fields, after: Fields, path: string): ChangedField[] {
  const names = [...new Set([...Object.keys(before), ...Object.keys(after)])];
  return names.flatMap((name): ChangedField[] => {
    const field = path === '' ? name : `${path}.${name}`;
    const [was, is] = [before[name], after[name]];
    if (isSame(was, is)) return [];
    if (isFields(was) && isFields(is)) return differences(was, is, field);
    const isLong = LONGEST_VALUE < JSON.stringify([was, is]).length;
    return [
      {
        field,
        ...(isLong || was === undefined ? {} : { before: was }),
        ...(isLong || is === undefined ? {} : { after: is }),
      },
    ];
  });
}

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
