import { addDays, daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { FieldProblem } from '../problems/field-problem.js';
import type { Away, Person } from './farm.js';
import { isGrownUp } from './who-is-there.js';
import { MOST_DAYS, type Handover } from './handover.js';

/** Days in a row on which the same grown-ups are away and nobody was put in charge yet. */
export interface Absence {
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly awayIds: readonly string[];
  /** Those of them who are ill: in the house, and can do nothing. */
  readonly illIds: readonly string[];
  /** Grown-ups who are there: they keep their hours, and nothing has to be handed over. */
  readonly stayIds: readonly string[];
}

/**
 * Absences told of the farm's people, from today on, that no hand-over covers; a long one in parts
 * that a sheet can hold.
 *
 * @param people children count neither as away nor as there: they are in charge of nothing
 */
export function absencesAhead(
  people: readonly Person[],
  handovers: readonly Pick<Handover, 'from' | 'to'>[],
  today: PlainDate,
): Absence[] {
  const adults = people.filter(isGrownUp);
  const absences = adults.flatMap(({ away }) => away).filter(({ to }) => today <= to);
  // Nobody comes or goes between two of these days.
  const turns = [...absences, ...handovers]
    .flatMap(({ from, to }) => [from, addDays(to, 1)])
    .filter((day) => today < day);
  const starts = [...new Set([today, ...turns])].sort();
  return starts.slice(0, -1).flatMap((from, k) => {
    const to = addDays(starts[k + 1]!, -1);
    const isAway = ({ away }: Person): boolean => away.some((a) => a.from <= from && from <= a.to);
    const awayIds = adults.filter(isAway).map(({ id }) => id);
    const isHandedOver = handovers.some((each) => each.from <= from && from <= each.to);
    if (awayIds.length === 0 || isHandedOver) return [];
    const isIll = ({ away }: Person): boolean =>
      away.some((a) => a.from <= from && from <= a.to && a.isIll === true);
    const illIds = adults.filter((person) => isAway(person) && isIll(person)).map(({ id }) => id);
    const stayIds = adults.filter((person) => !isAway(person)).map(({ id }) => id);
    return inParts(from, to).map((part) => ({ ...part, awayIds, illIds, stayIds }));
  });
}

/** Said of days that are to be planned and lie behind. */
export const OVER = 'These days are over: check the year.';

/** Days away or handed over of which the last is over already: they change nothing any more. */
export const overAlready = (field: string, to: PlainDate, today: PlainDate): FieldProblem[] =>
  to < today ? [{ field, code: 'out-of-bounds', given: to, min: today, fix: OVER }] : [];

/** The same people, some of them away on days besides; told again the same days count once. */
export const withAway = <Someone extends Person>(
  people: readonly Someone[],
  { awayIds, ...days }: Away & { readonly awayIds: readonly string[] },
): Someone[] =>
  people.map((person) => {
    const isTold = person.away.some(({ from, to }) => from === days.from && to === days.to);
    return !awayIds.includes(person.id ?? '') || isTold
      ? person
      : { ...person, away: [...person.away, days] };
  });

/** The same people, none of those on days of an absence: what is left of longer ones stays. */
export const withoutAway = <Someone extends Person>(
  people: readonly Someone[],
  { awayIds, from, to }: Away & { readonly awayIds: readonly string[] },
): Someone[] =>
  people.map((person) => {
    const isMeant = awayIds.includes(person.id ?? '');
    if (!isMeant || !person.away.some((each) => each.from <= to && from <= each.to)) return person;
    const away = person.away.flatMap((each) =>
      [
        { ...each, to: each.to < from ? each.to : addDays(from, -1) },
        { ...each, from: to < each.from ? each.from : addDays(to, 1) },
      ].filter((part) => part.from <= part.to),
    );
    return { ...person, away };
  });

const inParts = (from: PlainDate, to: PlainDate): { from: PlainDate; to: PlainDate }[] =>
  Array.from({ length: Math.ceil((daysBetween(from, to) + 1) / MOST_DAYS) }, (_, k) => {
    const start = addDays(from, k * MOST_DAYS);
    const end = addDays(start, MOST_DAYS - 1);
    return { from: start, to: end < to ? end : to };
  });
