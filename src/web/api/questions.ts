import type { Clash } from '../../../shared/farm/merge-row.js';
import type { FormWords } from '../../../shared/problems/field-problem.js';

/** What is asked above whatever is open. */
export type Question =
  | { readonly about: 'clashes'; readonly clashes: readonly Clash[]; readonly words: FormWords }
  | {
      readonly about: 'deleting';
      readonly changed: readonly (readonly [field: string, value: unknown])[];
      readonly words: FormWords;
    }
  | { readonly about: 'leaving' };

/** What the answer to each question is; undefined when it was closed without one. */
export interface Answers {
  readonly clashes: readonly Clash[];
  readonly deleting: true;
  readonly leaving: true;
}
