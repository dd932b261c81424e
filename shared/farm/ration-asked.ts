import { within } from './bounds.js';
import { choice, list, number, optional, row, rows, type RowOf } from './field.js';
import { ingredientProductFields } from './mix-ingredient.js';
import { id } from './words.js';

/** How much is mixed at once. */
export const BATCH_KG = number(
  'Mixed at once',
  within(1, 2000, 'kg', 'Give what you mix at once, such as 45 kg (100 lb).'),
);

/** Birds of one age that eat of it as well. */
export const alsoForFields = row('AlsoFor', { birdsId: id('Birds'), stageId: id('Age') });

/** A mix that is asked for: for which birds, at what age, how much, and of what. */
export const rationAskedFields = row('RationAsked', {
  birdsId: id('Birds'),
  stageId: id('Age'),
  /** One mix for several flocks: it then keeps the strictest need of each nutrient. */
  alsoFor: optional(rows('Also for', alsoForFields, 4, 'flock')),
  batchKg: BATCH_KG,
  /** What is to cost least: the growth it gives (left out), or its weight, as of feed for sale. */
  by: optional(choice('Cheapest by', ['growth', 'weight'])),
  /** Ingredients of the farm that stay out of it, by their ids. */
  leaveOutIds: optional(list('Left out', id('Ingredient'), 100, 'ids')),
  /** Of what it is mixed; left out, of the farm's own ingredients. */
  ingredients: optional(rows('Ingredients', ingredientProductFields, 60, 'ingredient')),
});
export type RationAskedOfFarm = RowOf<typeof rationAskedFields>;
