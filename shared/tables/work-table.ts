import type { StartingHours } from '../farm/farm.js';
import type { Priority } from '../farm/job.js';
import type { Sourced } from '../explain/formula.js';

/** A warmth of the soil at which something is sown or planted. */
export interface WarmSoil extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly atLeastC: number;
}

/** What may go wrong, by what there is: heat, birds, cattle, their fence, bees; and young plants. */
export type Trouble = 'heat' | 'birds' | 'cattle' | 'fence' | 'hives' | 'seedlings';

/** What fitting work into hours and days goes by. */
export interface WorkTable {
  /** Days that are planned: a year, or to the last that is due, but no more than the most. */
  readonly horizonDays: Sourced & { readonly value: number; readonly mostDays: number };
  /** Hours a person has for the farm, Monday first, when none are given. */
  readonly hoursByWeekday: Sourced & { readonly values: readonly number[] };
  /** When those hours begin where nobody said, which decides how many are in daylight. */
  readonly startH: Sourced & StartingHours;
  /** Hours of the clock between which whoever works elsewhere is out of the house on a weekday. */
  readonly outByDay: Sourced & { readonly fromH: number; readonly toH: number };
  /** Hours by day between two looks of somebody who only comes in. */
  readonly visits: Sourced & { readonly everyH: number };
  readonly wetDay: Sourced & {
    /** Rain from which a day counts as wet. */
    readonly rainMm: number;
    /** Mean rain of a wet day. */
    readonly meanRainMm: number;
    /** Share of wet days that follow a wet one. */
    readonly wetAfterWetShare: number;
  };
  /** Share of days that come as forecast, by days ahead, the day on which it is made first. */
  readonly forecast: Sourced & { readonly rightShares: readonly number[] };
  /** Likeness (correlation) of one day's temperature to the last's, for years drawn by chance. */
  readonly dayToDay: Sourced & { readonly value: number };
  /** How cold a night has to be to count, by the names of frosts. */
  readonly frost: Sourced & {
    readonly lows: readonly { readonly name: string; readonly atOrBelowC: number }[];
  };
  /** When the garden and the hives turn, beside the frosts. */
  readonly keyDates: {
    /** Soil that is warm enough to sow or plant in. */
    readonly soil: readonly WarmSoil[];
    /** Days warm enough for bees, and so many of them in a row. */
    readonly hivesOpen: Sourced & {
      readonly name: string;
      readonly dayMaxC: number;
      readonly daysInRow: number;
    };
    readonly swarming: Sourced & { readonly name: string; readonly afterDays: number };
    /** The cold that kills open bloom. */
    readonly bloom: Sourced & { readonly name: string; readonly atOrBelowC: number };
  };
  readonly workableGround: Sourced & {
    readonly layerM: number;
    readonly drierThanFieldCapacityMm: number;
    readonly kc: number;
    readonly depletionShare: number;
    /** Soil of a garden of which nobody told. */
    readonly usualSoilId: string;
  };
  /** When rain lies as snow, and what of it melts a day for each degree above freezing. */
  readonly snow: Sourced & { readonly belowMeanC: number; readonly meltMmPerC: number };
  /** Work longer than so many hours may be spread, in pieces of at least so many. */
  readonly smallestPieceHours: Sourced & {
    readonly value: number;
    readonly longerThanHours: number;
  };
  /** What late, lost and moved work counts for when plans are weighed against each other. */
  readonly placing: Sourced & {
    readonly priority: readonly {
      readonly id: Priority;
      readonly lostCost: number;
      readonly lateCostPerDay: number;
    }[];
    /** Times as much for what animals cannot do without. */
    readonly animalsNeedItTimes: number;
    /** What moving one job to other days counts for when a plan is made again. */
    readonly moveCost: number;
  };
  /** Milking by hand: cleaning up each time, and each cow. */
  readonly milking: Sourced & {
    readonly timesADay: number;
    readonly hoursEachTime: number;
    readonly hoursEachCow: number;
  };
  /** Moving a herd to fresh grass, on top of the daily look. */
  readonly herdMove: Sourced & { readonly hoursBase: number };
  /** What to look for on a round of animals. */
  readonly lookFor: {
    readonly outdoorBirds: readonly string[];
    readonly cattle: readonly string[];
    readonly cattleInFrost: readonly string[];
  };
  /** What a sitter does first where something is wrong. */
  readonly inTrouble: Sourced & Readonly<Record<Trouble, string>>;
}
