import { within } from './bounds.js';
import { number, row, type RowOf } from './field.js';

/** What a tape says of an animal: a weight is worked out from it, and only that is kept. */
export const girthFields = row('Girth', {
  girthCm: number(
    'Girth',
    within(50, 300, 'cm', 'Lay the tape around the chest just behind the shoulder and forelegs.'),
  ),
  lengthCm: number(
    'Length',
    within(40, 250, 'cm', 'Measure from the point of the shoulder to the pin bone.'),
  ),
});
export type Girth = RowOf<typeof girthFields>;
