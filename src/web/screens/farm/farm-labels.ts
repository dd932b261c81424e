import { farmFields, type Farm } from '../../../../shared/farm/farm.js';
import { wordsOfRow } from '../../fields/field-words.js';
import type { FormWords } from '../../../../shared/problems/field-problem.js';

/** The words of the form, in the units that are being chosen in it. */
export const wordsOf = (farm: Partial<Farm>): FormWords =>
  wordsOfRow(farmFields, { units: farm.units ?? 'metric', currency: farm.currency ?? 'USD' });
