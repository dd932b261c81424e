import { row, optional, type RowOf } from './field.js';
import { brooderSeenFields } from './season-facts.js';
import { date, id } from './words.js';

/** A thermometer that was read in the brooder of a batch, on a day. */
export const brooderLookFields = row('BrooderLook', {
  id: optional(id()),
  batchId: id('Batch'),
  date: date('Day'),
  ...brooderSeenFields.fields,
});
export type BrooderLook = RowOf<typeof brooderLookFields>;
