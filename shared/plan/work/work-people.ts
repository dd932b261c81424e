import { weekdayOf, type PlainDate } from '../../calendar/plain-date.js';
import type { Person } from '../../farm/farm.js';
import type { Handover } from '../../farm/handover.js';
import { handoverOn, isAtHome, isGrownUp } from '../../farm/who-is-there.js';
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

export type Dated = Pick<WorkRequest, 'handovers' | 'tables'>;

/** Whether a person is on the farm on a date, if only for the night; who comes in is on their days. */
export function isThere(
  person: WorkPerson,
  date: PlainDate,
  { handovers }: Pick<WorkRequest, 'handovers'>,
): boolean {
  const { comesInFor } = person;
  if (person.looksIn !== undefined) return isAtHome(person, date, []);
  return comesInFor === undefined
    ? isAtHome(person, date, handovers)
    : handoverOn(handovers, date)?.id === comesInFor;
}

/**
 * Whether somebody grown is on the farm on a date: children help, and do no work alone. Of a farm that
 * names children only nobody said who is with them.
 */
export const isAdultThere = (
  people: readonly WorkPerson[],
  date: PlainDate,
  request: Pick<WorkRequest, 'handovers'>,
): boolean =>
  people.every(({ isChild }) => isChild) ||
  people.some(
    (person) =>
      isGrownUp(person) && person.comesInFor === undefined && isThere(person, date, request),
  );

/**
 * Hours of a person on a date: on days that are handed over, of whoever stays, and of who is in charge
 * what was said for them, else their own.
 */
export function hoursOn(person: WorkPerson, date: PlainDate, dated: Dated): number {
  const handover = handoverOn(dated.handovers, date);
  const given = handover && isCaretaker(person, handover) ? handover.hoursPerDay : undefined;
  if (given !== undefined) return given;
  if (!isThere(person, date, dated)) return 0;
  const hours = person.hoursByWeekday ?? dated.tables.work.hoursByWeekday.values;
  return hours[weekdayOf(date) - 1]!;
}

/**
 * Whoever comes in does what animals depend on, alone; who looks in only what names them; a child what it is named for or what is for
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
  { id, isChild, looksIn }: WorkPerson,
  { personIds, forWhom }: Pick<WorkNeed, 'personIds' | 'forWhom'>,
): boolean {
  if (isChild && forWhom === 'adult') return false;
  if (looksIn !== undefined && !personIds) return false;
  return personIds ? personIds.includes(id) : !isChild || forWhom === 'child';
}
