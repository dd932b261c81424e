import type { BarKind, YearRow } from '../../../../shared/plan/year/year-row.js';
import { wanted, type YearWeek } from '../../../../shared/plan/year/year-weeks.js';
import { formatHours } from '../../../../shared/units/format.js';

/** What the lines of the strip are called, in the order of the key. */
export const BAR_WORDS: Record<BarKind, string> = {
  eggs: 'eggs set',
  hen: 'under a hen',
  brooder: 'brooder',
  pens: 'pens',
  coop: 'coop',
  laying: 'laying',
  freezer: 'freezer',
  grass: 'grass',
  hay: 'hay',
  calving: 'calving',
  work: 'days for it',
  away: 'away',
  sitter: 'in charge',
};

/** Heads of the groups of rows. */
export const GROUP_WORDS: Record<YearRow['kind'], string> = {
  batch: 'Birds',
  herd: 'Cattle',
  set: 'Garden, hives and other jobs',
  away: 'Away',
};

/** Where a row is looked at more closely. */
export function hrefOf(base: string, { kind, id }: Pick<YearRow, 'kind' | 'id'>): string {
  if (kind === 'batch') return `${base}/batches/${id}`;
  if (kind === 'herd') return `${base}/pasture`;
  return kind === 'set' ? `${base}/work/own` : `${base}/work/away`;
}

/** What a week asks for beyond what can be done in it, beside work that is named and led to. */
export function overInWords(week: YearWeek): string {
  const { isShort, hoursAvailable, unfitChoreDays: days } = week;
  return [
    isShort &&
      `the work takes ${formatHours(wanted(week))}, you have ${formatHours(hoursAvailable)}`,
    0 < days && `no time for all chores on ${days} day${days === 1 ? '' : 's'}`,
  ]
    .filter((part) => part !== false)
    .join('; ');
}
