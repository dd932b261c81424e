import { describeProblem, FieldError } from '../../shared/problems/field-problem.js';
import { isSettled } from '../../shared/checks/compare.js';
import { runChecks } from '../../shared/checks/run-checks.js';
import { loadChecks } from '../reference/load-checks.js';
import { loadTables } from '../reference/load-tables.js';
import { fileChecks, LEFT_OUT, referenceFolder } from './file-checks.js';
import { checksText } from './print-checks.js';

process.exitCode = run();

/** Prints what the program computes beside values from outside; 1 when a row needs to be looked at. */
function run(): number {
  try {
    const tables = loadTables();
    const folder = referenceFolder();
    const checks = [
      ...runChecks(loadChecks(tables), tables),
      ...(folder === undefined ? [] : fileChecks(folder, tables)),
    ];
    const text = checksText(checks, tables, folder === undefined ? LEFT_OUT : undefined);
    process.stdout.write(`${text}\n`);
    return checks.every(isSettled) ? 0 : 1;
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    for (const problem of error.problems) console.error(describeProblem(problem));
    return 1;
  }
}
