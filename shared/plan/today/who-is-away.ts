import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import type { FarmPicture } from '../../farm/picture.js';

/** Somebody of the household who is not there today, and the last day of that. */
export interface AwayToday {
  readonly name: string;
  readonly to: PlainDate;
  readonly isIll?: true;
}

/** Who is away today, each to the end of all their days away that follow one another. */
export const whoIsAway = ({ people, today }: Pick<FarmPicture, 'people' | 'today'>): AwayToday[] =>
  people.flatMap(({ name, away }): AwayToday[] => {
    const endOf = (day: PlainDate): PlainDate | undefined =>
      away
        .filter(({ from, to }) => from <= day && day <= to)
        .map(({ to }) => to)
        .sort()
        .at(-1);
    let to = endOf(today);
    if (to === undefined) return [];
    for (let next = endOf(addDays(to, 1)); next !== undefined; next = endOf(addDays(to, 1)))
      to = next;
    const isIll = away.some((a) => a.isIll === true && a.from <= today && today <= a.to);
    return [{ name, to, ...(isIll ? { isIll } : {}) }];
  });
