import { isPlainDate } from '../../shared/calendar/plain-date.js';
import type { ArchiveRow } from './archive-format.js';
import type { StoredColumn, StoredTable } from './stored-table.js';

/** JSON nested deeper than this is none of ours, and could not be written out again. */
const DEEPEST = 50;

/** What keeps a row from being a row of a table, in a few words; undefined when nothing does. */
export function whyNoRow({ columns }: StoredTable, row: ArchiveRow): string | undefined {
  for (const column of columns) {
    const why = whyNoValue(column, row[column.name]);
    if (why !== undefined) return `${column.name} ${why}`;
  }
  const unknown = Object.keys(row).find((name) => !columns.some((column) => column.name === name));
  return unknown === undefined ? undefined : `${unknown.slice(0, 40)} is not known`;
}

function whyNoValue(column: StoredColumn, value: unknown): string | undefined {
  if (value === undefined) return 'is missing';
  if (value === null) return column.mayBeEmpty ? undefined : 'is empty';
  switch (column.kind) {
    case 'yes-no':
      return typeof value === 'boolean' ? undefined : 'is not yes or no';
    case 'number':
      return Number.isFinite(value) ? undefined : 'is not a number';
    case 'date':
      return isPlainDate(value) ? undefined : 'is not a date';
    case 'text':
      return whyNoText(column, value);
  }
}

function whyNoText({ isJson, maxLength }: StoredColumn, value: unknown): string | undefined {
  const isNested = typeof value === 'object';
  if (isNested ? !isShallow(value) : isJson || typeof value !== 'string')
    return 'is not of its kind';
  const text = isNested ? JSON.stringify(value) : (value as string);
  if (maxLength !== undefined && maxLength < [...text].length) return 'is too long';
  // PostgreSQL keeps no zero bytes.
  return text.includes('\0') ? 'holds a zero byte' : undefined;
}

const isShallow = (value: unknown, depth = 0): boolean =>
  typeof value !== 'object' ||
  value === null ||
  (depth < DEEPEST && Object.values(value).every((each) => isShallow(each, depth + 1)));
