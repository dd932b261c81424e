import { daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Reading, WorkNeed } from './work-need.js';

type Chained = Pick<WorkNeed, 'key' | 'waitsFor' | 'conditions'>;

/**
 * The dry spell that a piece of work follows in where what it waits for is done already: hay that
 * is mown is turned in the days that were dry enough to mow.
 */
export function spellsBegun(
  { needs, marks }: Pick<Reading, 'needs' | 'marks'>,
  today: PlainDate,
): (need: Chained) => { readonly spellUntilDay?: number } {
  const byKey = new Map(needs.map((need) => [need.key, need]));
  const untilDay = ({ waitsFor }: Chained, depth: number): number | undefined => {
    if (LONGEST_CHAIN < depth) return undefined;
    for (const { key } of waitsFor) {
      const before = byKey.get(key);
      if (!before) continue;
      const { dryDaysInRow } = before.conditions;
      const doneOn = marks.get(key)?.doneOn;
      if (dryDaysInRow !== undefined)
        return doneOn === undefined ? undefined : daysBetween(today, doneOn) + dryDaysInRow - 1;
      const further = untilDay(before, depth + 1);
      if (further !== undefined) return further;
    }
    return undefined;
  };
  return (need) => {
    const day = need.conditions.dryDaysInRow === undefined ? untilDay(need, 0) : undefined;
    return day === undefined || day < 0 ? {} : { spellUntilDay: day };
  };
}

/** Work in a circle is refused later, with its names. */
const LONGEST_CHAIN = 20;
