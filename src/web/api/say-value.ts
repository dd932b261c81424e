import { sayValue as sayFieldValue } from '../../../shared/farm/say-value.js';
import type { FormWords } from '../../../shared/problems/field-problem.js';
import { seenName } from './seen-rows.js';

/** The value of a field in a few words, in the farm's units, for a form that has no input for it. */
export const sayValue = (field: string, value: unknown, words: FormWords): string =>
  sayFieldValue(field, value, {
    labelOf: words.labelOf,
    unitOf: (path) => words.unitOf?.(path),
    nameOf: seenName,
    reader: words.reader,
  });
