import { optional, row, type RowOf } from './field.js';
import { calvedFields } from './season-facts.js';
import { date, id } from './words.js';

/** A cow of a herd calved on a day. */
export const calvingToldFields = row('CalvingTold', {
  id: optional(id()),
  herdId: id('Herd'),
  date: date('Day'),
  ...calvedFields.fields,
});
export type CalvingTold = RowOf<typeof calvingToldFields>;
