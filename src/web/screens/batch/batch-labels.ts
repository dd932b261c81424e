import { batchFields, type Purpose } from '../../../../shared/farm/batch.js';
import { WEEKDAYS } from '../../../../shared/units/dates.js';
import type { Reader } from '../../../../shared/units/format.js';
import { labelsFrom, wordsOfRow } from '../../fields/field-words.js';
import type { FormWords } from '../../../../shared/problems/field-problem.js';

/** What the wanted birds are called: a batch for meat ends in the freezer. */
export const WANTED: Readonly<Record<Purpose, string>> = {
  meat: 'Birds wanted in the freezer',
  layers: 'Hens wanted',
};

/** Weekdays to choose from, by their ISO number as text. */
export const WEEKDAY_CHOICES = WEEKDAYS.map((name, i) => ({ id: String(i + 1), name }));

/** The words of the order's form; the arrival finder's fields are among them. */
export function batchWords(purpose: Purpose, reader: Reader): FormWords {
  const words = wordsOfRow(batchFields, reader);
  const own = labelsFrom({
    wantedBirds: WANTED[purpose],
    from: 'From',
    to: 'To',
    weekday: 'Delivery weekday',
    goal: 'Ready for',
    on: 'Ready by',
    head: 'Birds on the slot',
  });
  const pathOf = (field: string): string => field.replace(/^batch\./, '');
  return {
    ...words,
    labelOf: (field) => own(pathOf(field)) ?? words.labelOf(pathOf(field)),
    unitOf: (field) => words.unitOf?.(pathOf(field)),
  };
}
