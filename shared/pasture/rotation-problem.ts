import type { Judgements } from '../tables/judgements.js';
import type { Sward } from './sward.js';

/** What an order of moves is weighed by. */
export type GrazingJudgements = Readonly<Record<keyof Judgements['grazing'], number>>;

/** Herds as the search sees them: what they would eat of grass on each day. */
export interface Grazers {
  readonly demandKg: Float64Array;
  readonly longestStayDays: number;
  /** First day they may be on grass. */
  readonly notBefore: number;
  /** Paddock they stand in at the start and since which day (negative), or undefined. */
  readonly startsIn?: { readonly paddock: number; readonly since: number };
}

export interface RotationProblem {
  readonly swards: readonly Sward[];
  readonly herds: readonly Grazers[];
  /** First day of the plan and the day after its last. */
  readonly from: number;
  readonly to: number;
  /** Share eaten of what disappears, by days of stay, and how much less in rank grass. */
  readonly harvestShare: readonly number[];
  readonly rankDrop: number;
  readonly judged: GrazingJudgements;
}

/** A herd in a paddock from a day on, for some days. */
export interface Stay {
  readonly herd: number;
  readonly paddock: number;
  readonly from: number;
  readonly days: number;
}
