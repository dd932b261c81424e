import { daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Reading, WorkNeed } from './work-need.js';

type Chained = Pick<WorkNeed, 'key' | 'waitsFor' | 'conditions'>;
type Open = Chained & Pick<WorkNeed, 'fromDay' | 'untilDay'>;

/**
 * The dry spell that a piece of work follows in where what it waits for is done already: hay that
 * is mown is turned in the days that were dry enough to mow, and not on the day it was mown.
 */
export function spellsBegun(
  { needs, marks }: Pick<Reading, 'needs' | 'marks'>,
  today: PlainDate,
): (need: Open) => Pick<WorkNeed, 'fromDay' | 'spellUntilDay'> {
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
  /** First day after what is done by as many days as it waits for that. */
  const soonest = ({ waitsFor }: Chained): number =>
    Math.max(
      ...waitsFor.map(({ key, days }) => {
        const doneOn = marks.get(key)?.doneOn;
        return doneOn === undefined ? -Infinity : daysBetween(today, doneOn) + days;
      }),
    );
  return (need) => {
    const day = need.conditions.dryDaysInRow === undefined ? untilDay(need, 0) : undefined;
    const { fromDay, untilDay: last } = need;
    if (day === undefined || day < 0) return { fromDay };
    return { fromDay: Math.min(last, Math.max(fromDay, soonest(need))), spellUntilDay: day };
  };
}

/** Work in a circle is refused later, with its names. */
const LONGEST_CHAIN = 20;
