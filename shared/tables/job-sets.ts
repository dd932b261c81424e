import type { Priority, WorkConditions } from '../farm/job.js';
import type { Sourced } from '../explain/formula.js';
import type { UnitSystem } from '../units/unit.js';

/** One job of a ready-made set, in days from the set's anchor and hours by a count. */
export interface SetJob {
  readonly id: string;
  readonly name: string;
  readonly firstOffsetDays: number;
  readonly dueOffsetDays: number;
  readonly lastOffsetDays?: number;
  readonly hoursBase: number;
  readonly hoursPerUnit: number;
  readonly priority: Priority;
  readonly conditions: WorkConditions;
  readonly canBeSpread: boolean;
  /** Less at a time is no use, of work that is longer than two such pieces: common practice, no source. */
  readonly smallestPieceHours?: number;
  /** What it puts out is harmed by a night at or below this. */
  readonly harmedAtOrBelowC?: number;
  readonly isRawManure?: boolean;
  /** Another job of the set that comes first, and the days to wait after it. */
  readonly waitsFor?: string;
  readonly waitDays?: number;
  readonly mostWaitDays?: number;
  /** Work that comes again: how often, and how many times in all. */
  readonly everyDays?: number;
  readonly times?: number;
  readonly ifLate: string;
}

/** Work that competes with the animals for the same hours, as a set to take or leave. */
export interface JobSet extends Sourced {
  readonly id: string;
  readonly name: string;
  /**
   * What the count counts on farms of either units, and how many of what its hours are given for
   * one of those is.
   */
  readonly counted: Readonly<Record<UnitSystem, { readonly unit: string; readonly each: number }>>;
  readonly anchor: 'last-frost' | 'first-frost' | 'date';
  readonly anchorName: string;
  /** Where the date to begin with comes from, when the anchor is a date of the user's. */
  readonly suggest?:
    | { readonly from: 'last-frost'; readonly offsetDays?: number }
    /** The next turn-out of a herd there is; else the last frost. */
    | { readonly from: 'turn-out' }
    /** The first warm days of the year, on which hives can be opened. */
    | { readonly from: 'hives-open' };
  readonly jobs: readonly SetJob[];
}
