import { problemsOfChecks } from '../../shared/checks/problems-of-checks.js';
import type { CheckTables } from '../../shared/checks/run-checks.js';
import { TOPIC_NAMES, TOPICS } from '../../shared/checks/topics.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import type { Tables } from '../../shared/tables/tables.js';
import { parsedSeed, readSeed } from './load-tables.js';

/**
 * Reads and checks the rows of checks in seeds/checks/, a file a topic.
 *
 * @throws FieldError naming file, row and field of whatever is wrong
 */
export function loadChecks(tables: Tables, read = readSeed): CheckTables {
  const files = Object.fromEntries(
    TOPIC_NAMES.map((topic) => {
      const file = `checks/${topic}.json`;
      return [topic, parsedSeed(file, read(file))];
    }),
  );
  const problems = problemsOfChecks(files, TOPICS, tables);
  if (0 < problems.length) throw new FieldError(problems);
  return files as CheckTables;
}
