import type { Mark, Sourced } from '../explain/formula.js';
import type { Ranged } from './bird-tables.js';

export interface LayPoint {
  readonly ageWeeks: number;
  readonly henDayPercent: number;
}

/** Lay by age of one kind of hen in her first cycle, in good light and air. */
export interface LayCurve extends Sourced {
  readonly id: string;
  readonly name: string;
  /** The curve in whose place this one may be chosen. */
  readonly insteadOf?: string;
  readonly firstEggWeek: number;
  /** Range of published ages at the first egg. */
  readonly firstEggWeekLow: number;
  readonly firstEggWeekHigh: number;
  /** Percent of the hens that lay on a day. */
  readonly points: readonly LayPoint[];
  /** What flocks lay of the points. */
  readonly flock: Sourced & Ranged & { readonly value: number };
  /** How much of the loss of short days a hen feels in her first year, 0 to 1. */
  readonly lightShare: Sourced & { readonly value: number };
  readonly eggWeight: readonly { readonly ageWeeks: number; readonly eggG: number }[];
  readonly eggWeightMark: Mark;
  readonly note?: string;
}

export interface LightPoint {
  readonly dayH: number;
  readonly share: number;
}

/** Light that hens are given, and what they lay by it. */
export interface LightTable extends Sourced, Ranged {
  readonly targetH: number;
  readonly startAgeDays: number;
  readonly risePerWeekH: number;
  readonly response: Sourced & {
    /** Share of the lay that is left at a length of the day. */
    readonly points: readonly LightPoint[];
    /** A day that is shorter than so many days before … */
    readonly fallDays: number;
    /** … by more than this leaves … */
    readonly fallH: number;
    /** … a further share, until the first molt. */
    readonly fallShare: number;
  };
}

export interface AirPoint {
  readonly airC: number;
  readonly share: number;
}

export interface MoltTable extends Sourced {
  /** Hens younger than this in fall lay through it. */
  readonly fromAgeWeeks: number;
  /** A molt begins so long after the day falls fastest. */
  readonly afterEquinoxDays: number;
  /** Where the day changes less than `seasonH` over the year, hens molt at this age. */
  readonly seasonlessAgeWeeks: number;
  readonly seasonH: number;
  readonly weeks: number;
  /** Weeks in which lay falls at the beginning, and comes back at the end. */
  readonly edgeWeeks: number;
  /** Lay that is left in the middle of it, over a flock whose hens do not all molt at once. */
  readonly share: number;
}

/** What hens lay beside their age and light. */
export interface LayingTable {
  /** Share of the lay that is left at an average air temperature of the coop. */
  readonly air: Sourced & { readonly points: readonly AirPoint[] };
  readonly molt: MoltTable;
  /** Eggs of a hen in each laying year over those of the first. */
  readonly years: Sourced & Ranged & { readonly shares: readonly number[] };
  /** Days of counted eggs at which the household's own count weighs as much as the table. */
  readonly ownCounts: Sourced & { readonly days: number };
  /** Calcium of the feed of hens, and of oyster shell. */
  readonly shell: Sourced & {
    readonly hensNeedPercent: number;
    readonly shellHoldsPercent: number;
  };
}
