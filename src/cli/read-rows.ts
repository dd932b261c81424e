import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';

/** Rows of a file of data, by the names of its columns. */
export type ReadRows = (file: string) => readonly Readonly<Record<string, string>>[];

/** Reads CSV files of a folder; lines that begin with # are remarks. */
export const rowsIn =
  (folder: string): ReadRows =>
  (file) =>
    Papa.parse<Record<string, string>>(readFileSync(join(folder, file), 'utf8'), {
      header: true,
      comments: '#',
      skipEmptyLines: true,
    }).data;
