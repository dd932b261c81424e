import { isWeaker } from '../explain/formula.js';
import { problemsOfField } from '../farm/check-row.js';
import type { FieldProblem } from '../problems/field-problem.js';
import type { Tables } from '../tables/tables.js';
import { checkRows, type CheckRow } from './check-row.js';
import type { Topic } from './given.js';

/**
 * What is wrong in the rows of checks: a field that is missing, unknown or out of its bounds, an id
 * that comes twice, a source that is not listed, a mark that claims more than its source, a row
 * whose computation its topic does not have, and a computation that no row names.
 *
 * @param files what each file holds, by the name of its topic
 */
export function problemsOfChecks(
  files: Readonly<Record<string, unknown>>,
  topics: Readonly<Record<string, Topic>>,
  { sources }: Pick<Tables, 'sources'>,
): FieldProblem[] {
  const shapes = Object.entries(files).flatMap(([topic, held]) =>
    problemsOfField(checkRows, held, '').map((problem) => ({
      ...problem,
      field: inFile(topic, problem.field.replace(/^\./, '')),
    })),
  );
  // What a broken row refers to cannot be looked up.
  if (0 < shapes.length) return shapes;
  const taken = new Set<string>();
  return Object.entries(files as Readonly<Record<string, readonly CheckRow[]>>).flatMap(
    ([topic, rows]) => [
      ...rows.flatMap((row) => problemsOfRow(topic, row, topics[topic]!, sources, taken)),
      ...idleComputations(topic, rows, topics[topic]!),
    ],
  );
}

const inFile = (topic: string, path: string): string => `seeds/checks/${topic}.json: ${path}`;

function problemsOfRow(
  topic: string,
  row: CheckRow,
  { by }: Topic,
  sources: Tables['sources'],
  taken: Set<string>,
): FieldProblem[] {
  const problems: FieldProblem[] = [];
  const wrong = (field: 'id' | 'source' | 'mark' | 'by', allowed: string[], fix: string): void => {
    const given = row[field];
    const at = inFile(topic, `${row.id}.${field}`);
    problems.push({ field: at, code: 'not-allowed', given, allowed, fix });
  };
  const source = Object.hasOwn(sources, row.source) ? sources[row.source] : undefined;
  if (taken.has(row.id)) wrong('id', [], 'Give each its own id.');
  taken.add(row.id);
  if (!source) wrong('source', [], 'Name a row of seeds/sources.json, or add it there.');
  else if (isWeaker(source.mark, row.mark))
    wrong('mark', [source.mark], 'A row claims no more than its source.');
  if (!Object.hasOwn(by, row.by))
    wrong('by', Object.keys(by), `Name a computation of shared/checks/${topic}.ts.`);
  return problems;
}

const idleComputations = (topic: string, rows: readonly CheckRow[], { by }: Topic) =>
  Object.keys(by)
    .filter((name) => rows.every((row) => row.by !== name))
    .map((name): FieldProblem => ({
      field: inFile(topic, name),
      code: 'not-allowed',
      given: name,
      allowed: [],
      fix: 'No row is computed by it: add one, or take it out of the code.',
    }));
