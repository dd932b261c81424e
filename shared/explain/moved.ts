import type { Quantity } from './quantity.js';

/** What a number comes to when one thing turns out otherwise. */
export interface Moved {
  /** "If the birds stay a tenth lighter". */
  readonly what: string;
  readonly to: Quantity;
}

/** What is asked of a number beside its own formula, inputs and source. */
export interface AboutNumbers {
  /** Yields between the plans that it makes; what it returns is the answer. */
  readonly movedMost: (quantity: Quantity) => Generator<undefined, Moved | undefined>;
  /** When it will be known better, and by what. */
  readonly knownBetter: (quantity: Quantity) => string | undefined;
}
