import type { Sourced } from '../explain/formula.js';
import type { Origin } from '../farm/batch-origin.js';
import type { Purpose } from '../farm/batch.js';
import type { WorkConditions } from '../farm/job.js';

/** What tasks hang on: a day in the life of a batch (up to `delivery`) or of a herd. */
export type EventKind =
  | 'eggs-set'
  | 'candle'
  | 'lockdown'
  | 'arrival'
  | 'heaters-short'
  | 'hands-short'
  | 'mild-days'
  | 'harden-off'
  | 'last-medicated'
  | 'move-out'
  | 'processing'
  | 'first-egg'
  | 'delivery'
  | 'turn-out'
  | 'cattle-arrival'
  | 'quarantine-over'
  | 'calving'
  | 'mowing'
  | 'topping';

/** What a batch must have, or lack, for work that is not for every one. */
export type TaskCircumstance =
  | 'medicated'
  | 'older-flock'
  | 'brooder-assumed'
  | 'brooder-known'
  | 'brooder-stands'
  | 'pen-assumed'
  | 'coop-unfinished'
  | 'nests-short'
  | 'grower-feed'
  | 'laying-feed'
  | 'shell-apart'
  | 'plucked-by-hand'
  | 'plucked-by-machine'
  | 'first-processing';

/** Times of the day at which animals are seen to, in their order. */
export const ROUNDS = ['morning', 'noon', 'evening', 'night'] as const;
export type Round = (typeof ROUNDS)[number];

/** What the hours of a task grow with. */
export type WorkUnit = 'hundred-birds' | 'hundred-eggs' | 'ten-head' | 'acre' | 'ton';

/** Work before birds come, said of birds that are there already. */
export interface OnceHere {
  readonly name: string;
  readonly days: number;
  readonly ifLate: string;
  /** Days after they came on which it is due; left out, the day they came. */
  readonly offsetDays?: number;
  /** Left out, it waits for nothing. */
  readonly waitsFor?: readonly string[];
  /** Left out, as long as before they came. */
  readonly hoursBase?: number;
}

/** What a template says in some other case: what is left out stays. */
export type SaidOtherwise = Partial<Pick<TaskTemplate, 'name' | 'ifLate'>>;

/** A task before it has dates: hung on an event, in hours by a base and an amount for each unit. */
export interface TaskTemplate extends Sourced {
  readonly id: string;
  readonly name: string;
  /** What the birds are for, or how they are processed, where the task is not for all. */
  readonly purpose?: Purpose;
  readonly processing?: 'home' | 'hired';
  /** Where the birds come from, where the task is not for all. */
  readonly origins?: readonly Origin[];
  /** Left out of batches of which this does not hold. */
  readonly onlyIf?: TaskCircumstance;
  /** Classes of cattle it is for, where not for all. */
  readonly classes?: readonly string[];
  readonly event: EventKind;
  /** Done once for all such events of an owner that follow within so many days. */
  readonly onceWithinDays?: number;
  /** Daily work that goes on until another event. */
  readonly until?: EventKind;
  readonly offsetDays: number;
  /** First day it is of use, from the event, where it may be done sooner than its start. */
  readonly earliestOffsetDays?: number;
  /** Last day it can be started, from the event, where it would be too late after it. */
  readonly latestOffsetDays?: number;
  /** Nothing is left of it once that last day is past: what comes after it tells as much. */
  readonly lapses?: boolean;
  /** What it begins should have gone on since that last day when its event comes. */
  readonly runsUntilEvent?: boolean;
  /** So many days of it are as good, by a source that asks for the fewest: no event waits for more. */
  readonly leastRunDays?: number;
  /** How people go about it where it was begun later than that. */
  readonly ifShort?: string;
  /** Work that must be done before its event, and is of no use once that is past. */
  readonly beforeEvent?: boolean;
  /**
   * Animals are without feed, warmth or a place if it is not done, or their meat spoils: it comes first,
   * whatever the hours.
   */
  readonly animalsNeedIt?: boolean;
  /** Work of which nothing is left once the birds are ordered, or the eggs set. */
  readonly doneByOrder?: boolean;
  /** Work of which nothing is left once the birds were told to have come. */
  readonly doneByArrival?: boolean;
  /** How it reads where the birds never go out. */
  readonly keptIn?: SaidOtherwise;
  /** How it reads where it is not warm on the day. */
  readonly inTheCold?: SaidOtherwise;
  /**
   * How it is said, and for how many days it is of use, once birds were told to have come before it was
   * done: that it is dropped or asked for then is common practice, no source.
   */
  readonly onceHere?: OnceHere;
  readonly leadNote?: string;
  /** Left out of work that goes on until another event, where that always comes. */
  readonly lengthDays?: number;
  /** Work that comes with each animal, over days around the event: how many, and the first. */
  readonly spreadOver?: { readonly fromOffsetDays: number; readonly days: number };
  /** Days of that, and of daily work, where there is one animal: several do not come on one day. */
  readonly daysOfOne?: number;
  readonly hoursBase: number;
  readonly hoursPerUnit: number;
  readonly unit: WorkUnit;
  /** Done every day of its length, in those hours each day. */
  readonly isDaily: boolean;
  /** Of daily work: goes on past the days planned while the birds are there. */
  readonly goesOn?: boolean;
  readonly needs?: string;
  /** Of daily work: the rounds of the day on which it is done. */
  readonly rounds?: readonly Round[];
  /** Somebody looks at least every so many hours by day, in its first `days` days or in all. */
  readonly looks?: { readonly everyH: number; readonly days?: number };
  readonly conditions?: WorkConditions;
  /** Daily work that a child can do too, whom the household has given hours. */
  readonly forWhom?: 'child';
  /** Work that is only done when weather or grass asks for it: listed, not planned. */
  readonly onDemand?: boolean;
  /** Of processing at home: asked for where nobody has the hours for that as well. */
  readonly whoeverProcesses?: boolean;
  /** Fewer people than it is meant for can do it, as much longer: common practice, no source. */
  readonly fewerTakeLonger?: boolean;
  /** Days it may be done after its day without loss. */
  readonly mayFollowDays?: number;
  /** Not spread over days, such as a trip to the store. */
  readonly notSplit?: boolean;
  readonly waitsFor: readonly string[];
  /** Days to wait after some of them, such as for a floor to dry. */
  readonly waitDays?: Readonly<Record<string, number>>;
  /** Days after some of them within which it is done, such as before raked hay bleaches. */
  readonly mostWaitDays?: Readonly<Record<string, number>>;
  readonly waitsForOutside?: readonly string[];
  readonly ifLate: string;
  /** What it does to do it too soon, where it does. */
  readonly ifEarly?: string;
}
