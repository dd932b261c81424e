import type { PlainDate } from '../calendar/plain-date.js';

/** The household's choices for the whole pasture; what is left out takes the stated default. */
export interface PastureChoices {
  /** First and last day of the plan; by default the rest of this grazing season, or the next. */
  readonly from?: PlainDate;
  readonly to?: PlainDate;
  /** Rain of each month as a share of the usual, January first: 1 is usual. */
  readonly rainShareByMonth?: readonly number[];
  /** Rest of each paddock over the table's: 1.5 is half as long again. */
  readonly restFactor?: number;
  /** Paddocks shut in late summer, so that their grass stands when growth is over. */
  readonly keepForAutumnIds?: readonly string[];
  readonly feedingId?: string;
  readonly storingId?: string;
  readonly baleId?: string;
  readonly hayInStoreKg?: number;
  /** Hours the trough takes to refill for a day's water. */
  readonly refillH?: number;
}
