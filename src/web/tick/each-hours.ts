import { formatHours } from '../../../shared/units/format.js';

const COUNTS = ['', '', 'two', 'three', 'four', 'five', 'six'];

/** Hours of each who takes part, in words: “two people, 7 h 36 min each”. */
export const eachHours = (hours: number, people: number): string =>
  people < 2
    ? formatHours(hours)
    : `${COUNTS[people] ?? people} people, ${formatHours(hours)} each`;
