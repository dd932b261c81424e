import { addDays, type PlainDate } from '../calendar/plain-date.js';
import { whole } from './bounds.js';
import { number, optional, row, type RowOf } from './field.js';
import { date, id } from './words.js';

/** What a household writes down of its eggs: how many, over how many days up to the day told. */
export const eggsCountedFields = row('EggsCounted', {
  days: number(
    'Days counted',
    whole(1, 366, 'day', 'Give the days over which the eggs were counted.'),
  ),
  eggs: number('Eggs in all', whole(0, 1e6, 'eggs', 'Count the eggs of all hens of the batch.')),
});
export type EggsCounted = RowOf<typeof eggsCountedFields>;

/** The eggs of a batch, counted over some days. */
export const eggCountFields = row('EggCount', {
  id: optional(id()),
  batchId: id('Batch'),
  /** The last day that was counted. */
  date: date('Counted to'),
  ...eggsCountedFields.fields,
});
export type EggCount = RowOf<typeof eggCountFields>;

/** The first day that was counted. */
export const countedFrom = ({ date, days }: Pick<EggCount, 'date' | 'days'>): PlainDate =>
  addDays(date, 1 - days);
