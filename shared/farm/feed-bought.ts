import { number, optional, row, type RowOf } from './field.js';
import { boughtFields } from './season-facts.js';
import { date, id } from './words.js';

const { name, amount, eachKg, money, from } = boughtFields.fields;

/** Feed that was bought on a day, whatever it is for. */
export const feedBoughtFields = row('FeedBought', {
  id: optional(id()),
  date: date('Day'),
  name,
  amount: number('How many bags', amount.bounds),
  eachKg,
  money,
  from,
});
/** With the work whose tick told it, where one did. */
export type FeedBought = RowOf<typeof feedBoughtFields> & { readonly work?: string };
