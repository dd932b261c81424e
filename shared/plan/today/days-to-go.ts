import { daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import {
  from,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../../explain/quantity.js';
import { todayFormulas } from './today-formulas.js';

/** A date ahead in the life of a batch or herd. */
export interface NextDate {
  /** As it stands before “in 9 days”: out of the brooder, they leave, first eggs. */
  readonly words: string;
  readonly on: PlainDate;
  readonly days: NumberQuantity;
}

/**
 * A date ahead with the days to go.
 *
 * @param worked the date as its own plan worked it out, where it can be opened
 */
export const nextDate = (
  words: string,
  { on, today, worked }: { on: PlainDate; today: PlainDate; worked?: Quantity | undefined },
): NextDate => ({
  words,
  on,
  days: quantity(`Days to go: ${words}`, daysBetween(today, on), 'day', todayFormulas.daysToGo, [
    worked ? from(worked, 'D') : input('Date', on, 'date', 'D'),
    input('Today', today, 'date'),
  ]),
});
