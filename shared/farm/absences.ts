import type { PlainDate } from '../calendar/plain-date.js';
import type { Person } from './farm.js';
import type { Handover } from './handover.js';

/** Days on which somebody of the household is away. */
export interface Absence {
  readonly from: PlainDate;
  readonly to: PlainDate;
  /** Everybody who is away on one of these days. */
  readonly awayIds: readonly string[];
}

/** Absences that are not over and for which no days are handed over yet, the next first. */
export const absencesAhead = (
  people: readonly Person[],
  handovers: readonly Pick<Handover, 'from' | 'to'>[],
  today: PlainDate,
): Absence[] =>
  people
    .flatMap(({ away }) => away)
    .filter(({ to }) => today <= to)
    .filter((absence) => !handovers.some((handover) => meets(handover, absence)))
    .sort((a, b) => (a.from < b.from ? -1 : 1))
    .map(({ from, to }) => ({
      ...{ from, to },
      awayIds: people
        .filter(({ away }) => away.some((each) => meets(each, { from, to })))
        .map(idOf),
    }))
    .filter(({ from, to }, k, all) => all.findIndex((a) => a.from === from && a.to === to) === k);

const idOf = ({ id }: Person): string => id;

const meets = (a: Pick<Absence, 'from' | 'to'>, b: Pick<Absence, 'from' | 'to'>): boolean =>
  a.from <= b.to && b.from <= a.to;
