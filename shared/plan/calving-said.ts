import { addDays, type PlainDate } from '../calendar/plain-date.js';
import type { Farm } from '../farm/farm.js';
import { isInSeason, type CalvingSeason } from '../pasture/calving-season.js';
import type { Judgements } from '../tables/judgements.js';
import { formatDate } from '../units/dates.js';

/**
 * Hours after the water bag as those of the task of attending the birth, in
 * seeds/herd-task-templates.json; of straining as the caution of calving, which stands beside it.
 */
const LOOK =
  'look for a cow that stands apart or a water bag. Call your veterinarian when half an hour of hard straining brings nothing (an hour in a heifer), or no feet show 1 hour after the water bag, or no calf 2 hours after it.';

/** Calves that are awaited on a day, group by group and named cow by named cow. */
export function calvingSaid(
  seasons: readonly CalvingSeason[],
  {
    date,
    units,
    judged: { calvingSoonDays, overdueLongDays },
  }: { date: PlainDate; units: Farm['units']; judged: Judgements['alarms'] },
): string[] {
  const isAnyTold = seasons.some(({ calved }) => 0 < calved);
  const said = seasons.flatMap((season): string[] => {
    const { due, head, calved, cow } = season;
    const toCome = head - calved;
    if (toCome === 0) return [];
    const around = formatDate(due.due, { units, today: date });
    if (due.late < date) {
      if (!isInSeason(season, date)) return [];
      const isLong = addDays(due.late, overdueLongDays.value) < date;
      // Who tells of no calf at all is asked for some weeks; else it is said until it is told.
      if (!isAnyTold) return isLong ? [] : [noneTold(season, around)];
      return [
        `${overdue(season, around)}: ${isLong ? 'tell it if they have calved, else have them looked at for a calf, and ' : ''}call your veterinarian.`,
      ];
    }
    if (0 < calved)
      return [
        `${calved} of ${head} have calved, ${toCome} to come, due around ${around}: ${LOOK}`.replace(
          /^1 of (\d+) have/,
          '1 of $1 has',
        ),
      ];
    if (date < addDays(due.early, -calvingSoonDays.value)) return [];
    if (due.due < date)
      return [
        cow
          ? `${cow.name} was due around ${around}, and nobody told that she has calved: ${LOOK}`
          : `Calves were due around ${around}, and none is told yet: ${LOOK}`,
      ];
    return [
      cow
        ? `${cow.name} is due around ${around}: look whether she stands apart.`
        : `Calves are due around ${around}: look for a cow that stands apart.`,
    ];
  });
  return [...new Set(said)];
}

function noneTold({ head, cow }: CalvingSeason, around: string): string {
  const who = cow ? `${cow.name} was` : head === 1 ? 'A cow was' : `${head} cows were`;
  return `${who} due around ${around}, and no calf is told: tell what came. One that has not calved by now is overdue: have her looked at for a calf, and call your veterinarian.`;
}

function overdue({ head, calved, cow }: CalvingSeason, around: string): string {
  if (cow) return `${cow.name} is overdue since ${around}`;
  const left = head - calved;
  return `${calved} of ${head} ${calved === 1 ? 'has' : 'have'} calved, ${left} ${left === 1 ? 'is' : 'are'} overdue since ${around}`;
}
