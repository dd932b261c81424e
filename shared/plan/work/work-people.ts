import { weekdayOf, type PlainDate } from '../../calendar/plain-date.js';
import type { Person } from '../../farm/farm.js';
import type { Handover } from '../../farm/handover.js';
import type { WorkNeed } from './work-need.js';
import type { WorkRequest } from './work-request.js';

/** One of the household, or a sitter who only comes in for a hand-over. */
export interface WorkPerson extends Person {
  readonly comesInFor?: string;
}

/** Everyone with hours in a plan: the household, then those who come in. */
export const workPeople = (
  people: readonly Person[],
  handovers: readonly Handover[],
): WorkPerson[] => [
  ...people,
  ...handovers
    .filter(({ personId }) => personId === undefined)
    .map(({ id, sitter }) => ({
      id: `sitter-${id}`,
      name: sitter ?? '',
      away: [],
      comesInFor: id,
    })),
];

export const isCaretaker = (person: WorkPerson, { id, personId }: Handover): boolean =>
  person.comesInFor === id || (personId !== undefined && person.id === personId);

/** Hours of a person on a date: on days that are handed over, of whoever is in charge or stays. */
export function hoursOn(
  person: WorkPerson,
  date: PlainDate,
  { handovers, tables }: Pick<WorkRequest, 'handovers' | 'tables'>,
): number {
  const handover = handovers.find(({ from, to }) => from <= date && date <= to);
  if (handover && isCaretaker(person, handover)) return handover.hoursPerDay;
  if (handover && (handover.awayIds?.includes(person.id) ?? true)) return 0;
  if (person.comesInFor !== undefined) return 0;
  if (person.away.some(({ from, to }) => from <= date && date <= to)) return 0;
  const hours = person.hoursByWeekday ?? tables.work.hoursByWeekday.values;
  return hours[weekdayOf(date) - 1]!;
}

/**
 * Whoever comes in does what animals depend on, alone; a child what it is named for or what is for
 * children, but nothing that needs an adult; the rest of the household everything.
 */
export const canDo = (person: WorkPerson, need: WorkNeed): boolean =>
  person.comesInFor === undefined
    ? isFor(person, need)
    : need.priority === 'must' &&
      need.personIds === undefined &&
      (need.conditions.peopleNeeded ?? 1) === 1;

/** Whether work of the household is for this one of its people. */
export function isFor(
  { id, isChild }: WorkPerson,
  { personIds, forWhom }: Pick<WorkNeed, 'personIds' | 'forWhom'>,
): boolean {
  if (isChild && forWhom === 'adult') return false;
  return personIds ? personIds.includes(id) : !isChild || forWhom === 'child';
}
