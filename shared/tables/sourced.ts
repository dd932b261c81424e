import type { Mark } from '../explain/formula.js';

/** Where a value comes from and how well it is supported. Every table row carries both. */
export interface Sourced {
  readonly sources: readonly string[];
  readonly mark: Mark;
}

/** A publication, as listed where numbers come from. */
export interface Source {
  readonly publisher: string;
  readonly title: string;
  readonly year: string;
  readonly url: string;
  readonly mark: Mark;
  readonly note?: string;
}
