import type { NumberQuantity, Quantity } from '../../explain/quantity.js';

/** A day other than the best one: how much more its meat costs, and how much less or more it is. */
export interface OtherDay {
  readonly on: Quantity;
  readonly costs: NumberQuantity;
  /** Dressed weight against that of the best day; below 0 it is less. */
  readonly weight: NumberQuantity;
}

/** When meat birds have had enough feed. */
export interface StopFeeding {
  readonly best: Quantity;
  readonly bestAge: NumberQuantity;
  /** What all of it costs for its dressed weight if processed then. */
  readonly eachAtBest: NumberQuantity;
  readonly goodFrom: Quantity;
  readonly goodTo: Quantity;
  readonly weekEarly: OtherDay;
  readonly weekLate: OtherDay;
  /** The day of the plan: a slot that is booked, the weekday wished, or the age that was chosen. */
  readonly planned: OtherDay;
  /** Where the household gave a price. */
  readonly paysUntil?: Quantity;
}
