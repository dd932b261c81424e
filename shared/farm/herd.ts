import type { PlainDate } from '../calendar/plain-date.js';

/** Cattle of one class in a herd. */
export interface CattleGroup {
  readonly classId: string;
  readonly head: number;
  /** Weight of one on the first day of the plan or on arrival. */
  readonly weightKg?: number;
  readonly gainKgPerDay?: number;
  readonly milkKgPerDay?: number;
  readonly arrivesOn?: PlainDate;
  readonly leavesOn?: PlainDate;
  readonly bredOn?: PlainDate;
  /** Due date when it is known otherwise; else the service date plus the breed's gestation. */
  readonly calvesOn?: PlainDate;
  readonly breedId?: string;
}

/** Cattle that graze together. */
export interface Herd {
  readonly id: string;
  readonly name: string;
  readonly groups: readonly CattleGroup[];
  /** Longest stay in one paddock, days, so that regrowth is not bitten. */
  readonly longestStayDays?: number;
  readonly inPaddockId?: string;
  readonly inSince?: PlainDate;
  /** Not on grass before this date, whatever the grass. */
  readonly turnOutOn?: PlainDate;
  /** Batch of birds in pens or a mobile coop that follows this herd. */
  readonly followedByBatchId?: string;
  readonly followDays?: number;
}
