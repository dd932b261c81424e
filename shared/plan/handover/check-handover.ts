import type { Person } from '../../farm/farm.js';
import { besides, problemsOfRow } from '../../farm/check-row.js';
import { handoverFields, type Handover } from '../../farm/handover.js';
import type { FieldProblem } from '../../problems/field-problem.js';
import { formatDate, type DateReader } from '../../units/dates.js';

/** What is wrong with a hand-over by itself and beside the others of the farm. */
export function handoverProblems(
  handover: Handover,
  beside: {
    readonly people: readonly Person[];
    readonly others: readonly Handover[];
    readonly reader: DateReader;
  },
): FieldProblem[] {
  const { id, personId, awayIds = [], from, to } = handover;
  const { people, others, reader } = beside;
  const problems: FieldProblem[] = [];
  const known = people.map((person) => person.id);
  if (personId !== undefined && !known.includes(personId))
    problems.push({
      field: 'personId',
      code: 'not-allowed',
      given: personId,
      allowed: known,
      fix: 'Choose among the people of the farm.',
    });
  if (people.some((person) => person.id === personId && person.isChild))
    problems.push({
      field: 'personId',
      code: 'not-allowed',
      given: personId,
      allowed: people.filter(({ isChild }) => !isChild).map((person) => person.id),
      fix: 'A child is not left in charge: choose a grown-up, or a farm sitter who comes in.',
    });
  if (personId !== undefined && awayIds.includes(personId))
    problems.push({
      field: 'awayIds',
      code: 'conflict',
      given: personId,
      fix: 'Whoever is in charge is there: take them off those who are away, or choose someone else.',
    });
  const other = others.find((each) => each.id !== id && each.from <= to && from <= each.to);
  if (other)
    problems.push({
      field: 'from',
      code: 'conflict',
      given: from,
      fix: `Some of these days are on another sheet, from ${formatDate(other.from, reader)} to ${formatDate(other.to, reader)}: change that sheet or these days.`,
    });
  const away = people
    .find((person) => person.id === personId)
    ?.away.find((each) => each.from <= to && from <= each.to);
  if (away)
    problems.push({
      field: 'personId',
      code: 'conflict',
      given: personId,
      fix: `They are away from ${formatDate(away.from, reader)} to ${formatDate(away.to, reader)}: choose someone else or other days.`,
    });
  return besides(problemsOfRow(handoverFields, handover, '', 'passed'), problems);
}
