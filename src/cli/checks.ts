import { describeProblem, FieldError } from '../../shared/problems/field-problem.js';
import { isSettled } from '../../shared/checks/compare.js';
import { runChecks } from '../../shared/checks/run-checks.js';
import { loadChecks } from '../reference/load-checks.js';
import { loadTables } from '../reference/load-tables.js';
import { checksText } from './print-checks.js';

process.exitCode = run();

/** Prints what the program computes beside published values; 1 when a row needs to be looked at. */
function run(): number {
  try {
    const tables = loadTables();
    const checks = runChecks(loadChecks(tables), tables);
    process.stdout.write(`${checksText(checks, tables)}\n`);
    return checks.every(isSettled) ? 0 : 1;
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    for (const problem of error.problems) console.error(describeProblem(problem));
    return 1;
  }
}
