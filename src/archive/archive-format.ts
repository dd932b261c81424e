import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PROJECT_ROOT } from '../reference/load-tables.js';

/** The mark by which a file of this program is known, and the version of its shape. */
export const FORMAT = 'broodfold';
export const FORMAT_VERSION = 1;
export const MANIFEST_ENTRY = 'manifest.json';

/** One farm, or the whole database. */
export type Holding = 'farm' | 'everything';

/** What an archive says of itself. It is the last entry, as it counts the others. */
export interface Manifest {
  readonly format: typeof FORMAT;
  readonly formatVersion: number;
  readonly holds: Holding;
  /** Version of the program that made it. */
  readonly program: string;
  /** ISO 8601, UTC. */
  readonly madeAt: string;
  /** The changes of the database that its tables have been through, oldest first. */
  readonly migrations: readonly string[];
  readonly tables: readonly TableEntry[];
}

/** A table in an archive: JSON lines, a row each. */
export interface TableEntry {
  readonly name: string;
  readonly rows: number;
  readonly sha256: string;
}

/** A row by the names of its columns. Values are plain; JSON that is kept as text stands as JSON. */
export type ArchiveRow = Readonly<Record<string, unknown>>;

export const entryOf = (table: string): string => `tables/${table}.jsonl`;

export const PROGRAM_VERSION = (
  JSON.parse(readFileSync(join(PROJECT_ROOT, 'package.json'), 'utf8')) as { version: string }
).version;
