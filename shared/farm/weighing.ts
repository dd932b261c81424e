import { whole, within } from './bounds.js';
import { number, optional, row, type RowOf } from './field.js';
import { date, id } from './words.js';

const WEIGHT = 'Give the live weight, before the morning feed.';
const AVERAGE = number('Average weight', within(0.02, 25, 'kg', WEIGHT));

/** What a household writes down at the scale: the birds weighed, and their average or all together. */
export const weighedFields = row('Weighed', {
  birds: number('Birds weighed', whole(1, 5000, 'count', 'Give how many birds were weighed.')),
  averageKg: optional(AVERAGE),
  totalKg: optional(number('All together', within(0.02, 20_000, 'kg', WEIGHT))),
});
export type Weighed = RowOf<typeof weighedFields>;

/** The average of some birds of a batch on a day. */
export const weighingFields = row('Weighing', {
  id: optional(id()),
  batchId: id('Batch'),
  date: date('Day'),
  birds: weighedFields.fields.birds,
  averageKg: AVERAGE,
});
export type Weighing = RowOf<typeof weighingFields>;

/** Average of what was weighed, kg. */
export const averageOf = ({ birds, averageKg, totalKg }: Weighed): number =>
  averageKg ?? totalKg! / birds;
