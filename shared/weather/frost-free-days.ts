import { daysBetween } from '../calendar/plain-date.js';
import type { Formula } from '../explain/formula.js';

export const frostFreeFormulas = {
  frostFree: {
    id: 'frost-free-days',
    title: 'Frost-free days',
    words:
      'Days from the last frost of spring to the first of fall, in half of the years; in nine of ten from the safe date to the safe date, which few years are both late and early enough to miss.',
    symbols: 'n = first − last',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/**
 * Days from the last frost of spring to the first of fall; across the turn of the year where
 * summer lies there.
 *
 * @param last month and day of the one, `first` of the other
 */
export function frostFreeDays(last: string, first: string): number {
  const year = first < last ? 2022 : 2023;
  return daysBetween(`${year}-${common(last)}`, `2023-${common(first)}`);
}

/** On the calendar of a common year. */
const common = (monthDay: string): string => (monthDay === '02-29' ? '02-28' : monthDay);
