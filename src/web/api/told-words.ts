import type { RowDescription } from '../../../shared/farm/field.js';
import type { FieldProblem, FormWords } from '../../../shared/problems/field-problem.js';
import type { Reader } from '../../../shared/units/format.js';
import { wordsOfRow } from './row-words.js';
import { seenName } from './seen-rows.js';

/** What the service found wrong with a fact, by the fields of its form and with names instead of ids. */
export const problemsOfFact = (problems: readonly FieldProblem[]): FieldProblem[] =>
  problems.map((each) => ({
    ...each,
    field: fieldOf(each.field),
    ...(each.boundBy === undefined ? {} : { boundBy: fieldOf(each.boundBy) }),
    given: (typeof each.given === 'string' && seenName(each.given)) || each.given,
  }));

/** The field of the form that a path of the service means. */
const fieldOf = (path: string): string => path.replace(/^(facts\.\d+\.)?(details\.)?/, '');

/** The words of the form that tells a fact. */
export function wordsOfFact(fields: RowDescription, reader: Reader): FormWords {
  const ofRow = wordsOfRow(fields, reader);
  return { ...ofRow, labelOf: (field) => (field === 'on' ? 'Day' : ofRow.labelOf(field)) };
}
