import type { Quantity } from './quantity.js';

/** What moves a number most. */
export interface Moved {
  /** "If the birds stay a tenth lighter", or what it is that is not known: "How it grows". */
  readonly what: string;
  /** What the number then comes to; left out where it was not tried. */
  readonly to?: Quantity;
  /** When that is known better, and by what, or that it never is. */
  readonly knownBetter: string;
}

/** A change that was tried. */
export type Tried = Pick<Moved, 'what'> & { readonly to: Quantity };

/** What is asked of a number beside its own formula, inputs and source. */
export interface AboutNumbers {
  /** Yields between the plans that it makes; what it returns is the answer. */
  readonly movedMost: (quantity: Quantity) => Generator<undefined, Moved | undefined>;
}
