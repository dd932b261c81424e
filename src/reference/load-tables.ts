import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { existsSync } from 'node:fs';
import { FieldError } from '../../shared/problems/field-problem.js';
import { problemsOfTables } from '../../shared/tables/check-tables.js';
import { TABLE_FILES, type Tables } from '../../shared/tables/tables.js';

/** The folder that holds package.json and seeds/, whether running from source or from dist. */
export const PROJECT_ROOT = findRoot(dirname(fileURLToPath(import.meta.url)));
export const SEEDS_DIR = join(PROJECT_ROOT, 'seeds');

export const readSeed = (file: string): string => readFileSync(join(SEEDS_DIR, file), 'utf8');

/**
 * Reads and checks every published table in seeds/.
 *
 * @throws FieldError naming file, row and field of whatever is wrong
 */
export function loadTables(read = readSeed): Tables {
  const entries = Object.entries(TABLE_FILES).map(
    ([name, file]) => [name, parsedSeed(file, read(file))] as const,
  );
  const tables = Object.fromEntries(entries);
  const problems = problemsOfTables(tables);
  if (0 < problems.length) throw new FieldError(problems);
  return tables as unknown as Tables;
}

/** The JSON of a file of seeds/, or a FieldError that names it. */
export function parsedSeed(file: string, text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch (error) {
    throw new FieldError([
      {
        field: `seeds/${file}`,
        code: 'unreadable',
        given: (error as Error).message,
        fix: 'Check for a missing quote, comma or bracket.',
      },
    ]);
  }
}

function findRoot(from: string): string {
  if (existsSync(join(from, 'package.json')) && existsSync(join(from, 'seeds'))) return from;
  const parent = dirname(from);
  if (parent === from) throw new Error('The seeds folder was not found above the program.');
  return findRoot(parent);
}
