import { batchFields } from './batch.js';
import { whole } from './bounds.js';
import { number, optional, row, rows, type RowOf } from './field.js';
import { date, id, price } from './words.js';

const { fields } = batchFields;

/** A batch as it might be raised instead: what is left out stays as it is. */
export const batchChoiceFields = row('BatchChoice', {
  wantedBirds: optional(fields.wantedBirds),
  strainId: optional(id('Breed or cross')),
  feedProgramId: optional(id('Feeds')),
  arrivalDate: optional(date('Arrival')),
  leaveAgeDays: fields.leaveAgeDays,
  /** All of their feed as the household mixes it, for as large a bag as is bought. */
  ownMixPerBag: optional(price('A bag of your own mix')),
  /** The same birds as two batches of half the size, so many weeks apart. */
  twoWeeksApart: optional(
    number(
      'Weeks between two half batches',
      whole(1, 26, 'count', 'Give the weeks from the first half batch to the second, 1 to 26.'),
    ),
  ),
});
export type BatchChoice = RowOf<typeof batchChoiceFields>;

/** Choices to set beside a batch as it is planned: four columns are as many as anybody reads. */
export const comparisonFields = row('Comparison', {
  choices: rows('Choices', batchChoiceFields, 3, 'choice'),
});
