import { optional, row, yesNo, type RowOf } from './field.js';
import { date } from './words.js';

/** What the household found when it went to look at the ground. */
export const groundLookFields = row('SeenGround', {
  date: date('Day'),
  isWorkable: yesNo('Dry enough'),
});
export type GroundLook = RowOf<typeof groundLookFields>;

/** A look as it is told; without an answer the look of that day is forgotten. */
export const toldGroundFields = row('GroundLook', {
  ...groundLookFields.fields,
  isWorkable: optional(groundLookFields.fields.isWorkable),
});
