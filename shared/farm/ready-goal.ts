import { whole } from './bounds.js';
import { choice, number, optional, row, type RowOf } from './field.js';
import { date } from './words.js';

/** What the plan of a batch can be begun from, in place of its arrival. */
export const readyGoalFields = row('ReadyGoal', {
  /** Rested and ready to eat, processed on a slot that is booked, or the first eggs. */
  goal: choice('Ready for', ['ready', 'slot', 'eggs']),
  on: date('Ready by'),
  /** Birds on the slot that is booked. */
  head: optional(
    number('Birds on the slot', whole(1, 5000, 'count', 'Give the birds the slot is booked for.')),
  ),
  /** ISO weekday on which the box comes. Wednesday when left out. */
  weekday: optional(
    number('Delivery weekday', whole(1, 7, 'count', 'Give 1 for Monday to 7 for Sunday.')),
  ),
});
export type ReadyGoal = RowOf<typeof readyGoalFields>;
