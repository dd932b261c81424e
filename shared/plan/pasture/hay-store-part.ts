import type { NumberQuantity, Quantity } from '../../explain/quantity.js';
import type { HayByWinter } from './hay-by-winter.js';
import type { UntoldCut } from './hay-untold.js';

/** Hay over the whole year: what is there, what is made, what the next winter takes, what to buy. */
export interface HayStorePart {
  /** From today to the first day of the plan, where that lies ahead. */
  readonly untilPlan?: NumberQuantity;
  readonly inStore?: NumberQuantity;
  /** Of bales that were told since. */
  readonly baled?: NumberQuantity;
  /** Of cuts before today whose bales nobody told. */
  readonly taken?: NumberQuantity;
  /** Of these, what nobody told of at all. */
  readonly untoldCuts?: readonly UntoldCut[];
  readonly own?: NumberQuantity;
  /** Left out where the grass that stands then feeds them until there is more. */
  readonly nextWinter?: NumberQuantity;
  readonly toBuy: NumberQuantity;
  readonly balesToBuy: NumberQuantity;
  /** Where some is to be bought for this winter, and some for the next. */
  readonly byWinter?: HayByWinter;
  /** Where hay is taken as made: what is to be bought if none of it was. */
  readonly toBuyUnmade?: NumberQuantity;
  readonly balesUnmade?: NumberQuantity;
  /** Only where it is known what lies in store. */
  readonly runsOut?: Quantity;
}
