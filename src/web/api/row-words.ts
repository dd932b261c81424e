import type { RowDescription } from '../../../shared/farm/field.js';
import { labelAt, unitAt } from '../../../shared/farm/field-at.js';
import type { FormWords } from '../../../shared/problems/field-problem.js';
import type { Reader } from '../../../shared/units/format.js';

/** The words of a form that saves a row: labels and units of its fields. */
export const wordsOfRow = (described: RowDescription, reader: Reader): FormWords => ({
  labelOf: (field) => labelAt(described, field),
  unitOf: (field) => unitAt(described, field),
  reader,
});
