import { whole, within } from './bounds.js';
import { list, number, optional, row, type RowOf } from './field.js';
import { date, id } from './words.js';

const WEIGHT = 'Give the live weight, before the morning feed.';
const AVERAGE = number('Average weight', within(0.02, 25, 'kg', WEIGHT));

/** More are weighed in a crate. */
const MOST_SINGLE = 300;
const EACH = list(
  'One by one',
  number('Bird', within(0.02, 25, 'kg', WEIGHT)),
  MOST_SINGLE,
  'numbers',
  1,
);

/** What a household writes down at the scale: the birds weighed, and their average, all together or each. */
export const weighedFields = row('Weighed', {
  birds: number('Birds weighed', whole(1, 5000, 'count', 'Give how many birds were weighed.')),
  averageKg: optional(AVERAGE),
  totalKg: optional(number('All together', within(0.02, 20_000, 'kg', WEIGHT))),
  /** In the order in which they were on the scale. */
  eachKg: optional(EACH),
});
export type Weighed = RowOf<typeof weighedFields>;

/** The average of some birds of a batch on a day. */
export const weighingFields = row('Weighing', {
  id: optional(id()),
  batchId: id('Batch'),
  date: date('Day'),
  birds: weighedFields.fields.birds,
  averageKg: AVERAGE,
  eachKg: optional(EACH),
});
export type Weighing = RowOf<typeof weighingFields>;

/** Average of what was weighed, kg. */
export const averageOf = ({ birds, averageKg, totalKg, eachKg }: Weighed): number =>
  averageKg ?? (totalKg ?? sumOf(eachKg!)) / birds;

/** Weights of single birds together, kg. */
export const sumOf = (eachKg: readonly number[]): number => eachKg.reduce((sum, kg) => sum + kg, 0);
