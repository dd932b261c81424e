import type { NumberQuantity } from '../../explain/quantity.js';
import type { NamedBatch } from '../../farm/picture.js';

/** One way to go on after something went wrong, as the plan of it comes out. */
export interface WayOn {
  readonly id: string;
  readonly words: string;
  /** What follows, a sentence each. */
  readonly follows: readonly string[];
  /** The numbers that it is judged by, to be opened. */
  readonly numbers?: readonly NumberQuantity[];
  /** Left out where nobody can say. */
  readonly isEnough?: boolean;
  /** The batch as it would be kept; left out of what is only done. */
  readonly batch?: NamedBatch;
}

/** What stands over the ways on: what is so, in sentences, and what can hurt somebody. */
export interface Mishap {
  readonly name: string;
  readonly follows: readonly string[];
  readonly numbers: readonly NumberQuantity[];
  readonly ways: readonly WayOn[];
  readonly cautions: readonly {
    readonly title: string;
    readonly text: string;
    /** Who says so. */
    readonly from: readonly string[];
  }[];
}
