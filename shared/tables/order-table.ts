import type { Sourced } from '../explain/formula.js';

/** What the number of chicks to order is reckoned by beside the losses of a kind of bird. */
export interface OrderTable {
  /** Likeness of the fates of two birds of a flock: losses come together, 0 to below 1. */
  readonly togetherness: Sourced & { readonly value: number };
  /** Share of sexed chicks that are of the sex they were sold as. */
  readonly sexing: Sourced & { readonly share: number };
  /** How sure of the number wanted an order is made, and what is shown beside it. */
  readonly surety: Sourced & { readonly usual: number; readonly shares: readonly number[] };
}
