import type { Mark } from '../explain/formula.js';

/** A publication, as listed where numbers come from. */
export interface Source {
  readonly publisher: string;
  readonly title: string;
  readonly year: string;
  readonly url: string;
  readonly mark: Mark;
  readonly note?: string;
}
