import { whole, within } from './bounds.js';
import { choice, list, number, optional, row, text, yesNo, type SavedRowOf } from './field.js';
import { OWN, price } from './words.js';

/** Where feed is bought: what a trip there or a delivery from there costs, and when one can be. */
export const supplierFields = row('Supplier', {
  ...OWN,
  name: text('Name'),
  comes: choice('How it comes', ['fetched', 'delivered']),
  /** Fuel and fees of one trip or delivery, however much is bought. */
  tripCost: optional(price('One trip or delivery costs')),
  /** What a trip takes of the household's day. */
  tripH: optional(number('A trip takes', within(0.1, 12, 'h', 'Give the hours there and back.'))),
  leadDays: optional(
    number('Order ahead', whole(0, 90, 'day', 'Give the days from the order until it is there.')),
  ),
  /** Its lower prices go by the bags of all feeds of a trip, as of a mixed pallet. */
  countsTogether: optional(yesNo('Lower prices count all feeds of a trip together')),
  /** ISO weekdays, 1 Monday to 7 Sunday; left out, those on which shops are. */
  openWeekdays: optional(
    list(
      'Open on',
      number('Weekday', whole(1, 7, 'count', 'Give 1 for Monday to 7 for Sunday.')),
      7,
      'weekdays',
      1,
    ),
  ),
});
export type Supplier = SavedRowOf<typeof supplierFields>;
