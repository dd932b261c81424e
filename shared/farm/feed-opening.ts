import { optional, row, type RowOf } from './field.js';
import { feedOpenedFields } from './season-facts.js';
import { date, id } from './words.js';

/** Bags that were opened for a batch on a day. */
export const feedOpeningFields = row('FeedOpening', {
  id: optional(id()),
  batchId: id('Batch'),
  date: date('Day'),
  ...feedOpenedFields.fields,
});
export type FeedOpening = RowOf<typeof feedOpeningFields>;
