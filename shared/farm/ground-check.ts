import { optional, row, yesNo, type RowOf } from './field.js';
import { date } from './words.js';

/** What the household found when it went to look at the ground. */
export const groundCheckFields = row('SeenGround', {
  date: date('Day'),
  isWorkable: yesNo('Dry enough'),
});
export type GroundCheck = RowOf<typeof groundCheckFields>;

/** A look as it is told; without an answer the look of that day is forgotten. */
export const toldGroundFields = row('GroundCheck', {
  ...groundCheckFields.fields,
  isWorkable: optional(groundCheckFields.fields.isWorkable),
});
