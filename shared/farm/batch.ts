import type { PlainDate } from '../calendar/plain-date.js';

export type Purpose = 'meat' | 'layers';
export type Sex = 'straight-run' | 'cockerels' | 'pullets';

/** Prices as decimal text in the farm's currency. A missing price leaves its line without money. */
export interface BatchPrices {
  readonly perBird?: string;
  readonly processingPerBird?: string;
  readonly beddingPerBag?: string;
  /** Price of one bag of each feed phase, by phase id. */
  readonly feedPerBag?: Readonly<Record<string, string>>;
}

/** One group of birds of the same age, as ordered. What is left out takes the stated default. */
export interface Batch {
  readonly id?: string;
  readonly name: string;
  readonly purpose: Purpose;
  readonly strainId: string;
  readonly sex: Sex;
  /** Birds wanted at the end: to the freezer, or hens at the first egg. */
  readonly wantedBirds: number;
  /** Birds really ordered, when that is fixed already. */
  readonly orderedBirds?: number;
  readonly orderDate?: PlainDate;
  readonly arrivalDate: PlainDate;
  /** Days from hatch to arrival. */
  readonly hatchToArrivalDays: number;

  readonly brooderId?: string;
  readonly penId?: string;
  readonly coopId?: string;
  readonly freezerId?: string;
  readonly feedStoreId?: string;

  readonly growthTableId?: string;
  readonly broodingScheduleId?: string;
  readonly spaceStandardId?: string;
  readonly moveOutRuleId?: string;
  /** A date the household has fixed for the move, whatever the nights. */
  readonly moveOutDate?: PlainDate;

  readonly weightFactor?: number;
  readonly feedFactor?: number;
  readonly wastePercent?: number;
  readonly firstWeekLossPercent?: number;
  readonly laterLossPercent?: number;

  /** Meat: leave at this age, counted from hatch … */
  readonly leaveAgeDays?: number;
  /** … or when the mean live weight reaches this. */
  readonly targetLiveKg?: number;
  readonly processing?: 'home' | 'hired';
  readonly dressingShare?: number;
  readonly movesPerDay?: number;
  /** Feed withdrawal days from the label of a medicated feed. */
  readonly medicatedWithdrawalDays?: number;

  readonly bagKg?: number;
  readonly prices?: BatchPrices;
}

/** What one batch holds on to over which days; enough to see whether two batches collide. */
export interface Occupancy {
  readonly batchName: string;
  readonly facilityId: string;
  readonly from: PlainDate;
  readonly to: PlainDate;
}
