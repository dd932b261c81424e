import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { existsSync } from 'node:fs';
import { TABLE_FILES, type Tables } from '../../shared/tables/tables.js';

/** The folder that holds package.json and seeds/, whether running from source or from dist. */
export const PROJECT_ROOT = findRoot(dirname(fileURLToPath(import.meta.url)));
export const SEEDS_DIR = join(PROJECT_ROOT, 'seeds');

export const readSeed = (file: string): string => readFileSync(join(SEEDS_DIR, file), 'utf8');

/** Reads every published table from seeds/. */
export function loadTables(): Tables {
  const entries = Object.entries(TABLE_FILES).map(
    ([name, file]) => [name, JSON.parse(readSeed(file)) as unknown] as const,
  );
  return Object.fromEntries(entries) as unknown as Tables;
}

function findRoot(from: string): string {
  if (existsSync(join(from, 'package.json')) && existsSync(join(from, 'seeds'))) return from;
  const parent = dirname(from);
  if (parent === from) throw new Error('The seeds folder was not found above the program.');
  return findRoot(parent);
}
