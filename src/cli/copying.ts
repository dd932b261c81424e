import type { TableEntry } from '../archive/archive-format.js';
import { describeProblem, FieldError } from '../../shared/problems/field-problem.js';

/**
 * Runs a command that copies the database, and says how it went.
 *
 * @param work gives what to say, or nothing when it was called without what it needs
 */
export async function runCopying(
  usage: string,
  work: (args: readonly string[]) => Promise<string | undefined>,
): Promise<void> {
  const args = process.argv.slice(2);
  const isAsking = args.some((arg) => arg.startsWith('-'));
  try {
    const said = isAsking ? undefined : await work(args);
    console.log(said ?? usage);
    process.exitCode = said === undefined && !isAsking ? 2 : 0;
  } catch (error) {
    const texts =
      error instanceof FieldError ? error.problems.map(describeProblem) : [whyNot(error)];
    for (const text of texts) console.error(text);
    process.exitCode = 1;
  }
}

/** 2 farms (1,234 rows) */
export function rowsText(tables: readonly TableEntry[]): string {
  const farms = tables.find(({ name }) => name === 'farms')?.rows ?? 0;
  const rows = tables.reduce((sum, table) => sum + table.rows, 0);
  return `${farms} ${farms === 1 ? 'farm' : 'farms'} (${rows.toLocaleString('en')} rows)`;
}

const whyNot = (error: unknown): string =>
  `That did not work: ${error instanceof Error ? error.message : String(error)}. Nothing was changed.`;
