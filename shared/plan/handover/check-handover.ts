import { daysBetween } from '../../calendar/plain-date.js';
import type { Person } from '../../farm/farm.js';
import type { Handover } from '../../farm/handover.js';
import type { FieldProblem } from '../../problems/field-problem.js';

/** A sheet of a page a day is of no use for longer. */
const MOST_DAYS = 31;

/** What is wrong with a hand-over beside the others of the farm. */
export function handoverProblems(
  { id, personId, caretaker, from, to }: Handover,
  { people, others }: { people: readonly Person[]; others: readonly Handover[] },
): FieldProblem[] {
  const problems: FieldProblem[] = [];
  if (to < from)
    problems.push({
      field: 'to',
      code: 'out-of-bounds',
      given: to,
      min: from,
      fix: 'The last day comes before the first: swap the two.',
    });
  if (MOST_DAYS <= daysBetween(from, to))
    problems.push({
      field: 'to',
      code: 'out-of-bounds',
      given: daysBetween(from, to) + 1,
      max: MOST_DAYS,
      unit: 'days',
      fix: 'Hand over a month at most; make another sheet for what comes after.',
    });
  if (personId === undefined && (caretaker ?? '').trim() === '')
    problems.push({
      field: 'caretaker',
      code: 'missing',
      given: caretaker,
      fix: 'Choose one of the people of the farm, or give the name of who comes in.',
    });
  const known = people.map((person) => person.id);
  if (personId !== undefined && !known.includes(personId))
    problems.push({
      field: 'personId',
      code: 'not-allowed',
      given: personId,
      allowed: known,
      fix: 'Choose among the people of the farm.',
    });
  const other = others.find((each) => each.id !== id && each.from <= to && from <= each.to);
  if (other)
    problems.push({
      field: 'from',
      code: 'conflict',
      given: from,
      fix: `These days are handed over already, from ${other.from} to ${other.to}: change that sheet or these days.`,
    });
  const away = people
    .find((person) => person.id === personId)
    ?.away.find((each) => each.from <= to && from <= each.to);
  if (away)
    problems.push({
      field: 'personId',
      code: 'conflict',
      given: personId,
      fix: `They are away from ${away.from} to ${away.to}: choose someone else or other days.`,
    });
  return problems;
}
