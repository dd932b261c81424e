import type { Sourced } from '../../explain/formula.js';
import type { Round } from '../../tables/task-template.js';
import type { KeyDate } from '../tasks/event.js';
import type { CareGap } from './care-gaps.js';
import type { ShortDay } from './short-day.js';
import type { EventToMove } from './event-to-move.js';
import type { LaterMove } from './later-event.js';
import type { GroundPart } from './ground-part.js';
import type { DoneNeed, StruckNeed } from './set-aside.js';
import type { WorkBasis } from './work-basis.js';
import type { WorkChange } from './work-changes.js';
import type { WorkNeed } from './work-need.js';

/** A piece of work on a day. */
export interface PlannedPiece {
  readonly date: string;
  readonly hours: number;
  readonly personIds: readonly string[];
}

export interface PlannedJob {
  readonly key: string;
  readonly name: string;
  readonly belongsTo?: WorkNeed['belongsTo'];
  readonly priority: WorkNeed['priority'];
  /** Of each person who takes part. */
  readonly hours: number;
  /** Hours of each that are done already and no longer counted in `hours`. */
  readonly hoursDone: number;
  /** By the table or the job, whatever was said and logged. */
  readonly reckonedHours: number;
  /** The hours were given for this piece of work itself. */
  readonly hasOwnHours?: true;
  /** How the household's own log changed those hours; left out where nothing was logged. */
  readonly learned?: WorkNeed['learned'];
  readonly kind?: string;
  /** Animals are without feed, warmth or a place if it is not done. */
  readonly animalsNeedIt?: true;
  /** It finds hands for birds that nobody has the hours to process. */
  readonly isForWantOfHands?: true;
  /** What its hours rest on. */
  readonly hoursFrom: Sourced;
  readonly peopleNeeded: number;
  /** By the calendar alone: first and last day, and the days between. */
  readonly earliest: string;
  readonly latest: string;
  readonly calendarSpareDays: number;
  /** Days it can slip from where it is planned to its latest; of work that does not fit, none. */
  readonly spareDays: number;
  /** Its latest day lies before today. */
  readonly alreadyLate: boolean;
  /** Where it stands; none when it does not fit. */
  readonly pieces: readonly PlannedPiece[];
  /** Hours of each who takes part that nobody has on its day: it is done all the same. */
  readonly shortHours: number;
  /** What somebody stays longer for its last piece, beyond the hours there are. */
  readonly longerHours?: number;
  /** Hours of each that find no place, though the rest does. */
  readonly lostHours: number;
  /** How much of it fits and why no more; only of work that is done in part. */
  readonly whyPart?: string;
  /** Days it is done after its latest. */
  readonly lateDays: number;
  /** A later move out or turn-out whose day has the hours that its own day lacks. */
  readonly later?: LaterMove;
  /** Names of what should be done before it, and is planned after it all the same. */
  readonly beforeItsTurn?: readonly string[];
  /** Why it stands there, or why it does not fit. */
  readonly why: string;
  /** What would make all of it fit, have it done in time, or on a day with hours for it. */
  readonly waysToFit: readonly string[];
  readonly ifLate?: string;
  /** What is bought on it, where it is the next trip for feed. */
  readonly buys?: WorkNeed['buys'];
  /** It is done on ground that is dry enough, and on no other. */
  readonly asksDryGround?: true;
  /** Whether it is done in the soil, where its fields say so. */
  readonly isInSoil?: boolean;
  /** What of today's weather or ground it cannot be done in, in words. */
  readonly unfitToday?: string;
}

/** Chores of a day: what, how long, who. */
export interface PlannedChoreDay {
  readonly key: string;
  readonly name: string;
  /** Batch or herd it is done for; the household's own has none. */
  readonly belongsTo?: string;
  readonly hours: number;
  /** Rounds of the day on which it is done; the household’s own has none. */
  readonly rounds?: readonly Round[];
  /** Of each animal, where it comes when one does and its hours are those of an average day. */
  readonly hoursEach?: number;
  readonly personId?: string;
  /** Hours of it that nobody has on that day. */
  readonly shortHours: number;
}

/** Batch or herd that is looked at so often by day, from one date to another. */
export interface PlannedLook {
  readonly ofId: string;
  readonly everyH: number;
  /** So often because drinkers last no longer. */
  readonly isOfDrinkers?: true;
  readonly from: string;
  readonly to: string;
}

export interface WorkWeek {
  /** As the country counts its weeks; of the first only today and what follows counts. */
  readonly from: string;
  /** Hours people give, and what of them chores and planned work take. */
  readonly hours: number;
  readonly choreHours: number;
  readonly plannedHours: number;
  /** Work whose latest day by the calendar lies in this week. */
  readonly dueHours: number;
  readonly isOverloaded: boolean;
}

/** The household's work fitted into its hours and days. */
export interface WorkPlan {
  readonly today: string;
  readonly to: string;
  readonly people: readonly { readonly id: string; readonly name: string }[];
  readonly jobs: readonly PlannedJob[];
  /** Batches and herds whose work is missing, because no plan of theirs can be made. */
  readonly unplanned: readonly string[];
  readonly chores: readonly (readonly PlannedChoreDay[])[];
  /** Events that come before all is ready for them. */
  readonly eventsToMove: readonly EventToMove[];
  /** Days on which animals have nobody. */
  readonly careGaps: readonly CareGap[];
  /** Days whose own work asks for more hours than people have. */
  readonly shortDays: readonly ShortDay[];
  /** How often animals want somebody to look at them by day. */
  readonly looks: readonly PlannedLook[];
  /** What the work hangs on, from today to the end of the plan. */
  readonly events: readonly KeyDate[];
  readonly weeks: readonly WorkWeek[];
  readonly basis: WorkBasis;
  /** Days with no rain, and those with workable ground as well; the rest is beyond the forecast. */
  readonly weather: {
    readonly label: string;
    readonly forecastDays: number;
    /** 1 for every day that is forecast: a forecast may leave days out. */
    readonly isForecast: readonly number[];
    readonly minC: readonly number[];
    readonly maxC: readonly number[];
    readonly rainMm: readonly number[];
    readonly isWorkable: readonly number[];
  };
  readonly ground: GroundPart;
  /** Ticked off, so that it can be opened again. */
  readonly done: readonly DoneNeed[];
  /** Struck out, so that it can be taken back. */
  readonly struckOut: readonly StruckNeed[];
  /** What changed since the last plan of an earlier day; left out when there was none. */
  readonly changes?: { readonly since: string; readonly list: readonly WorkChange[] };
  /** Found when the ground was looked at today. */
  readonly groundToday?: boolean;
  /** What late and lost work costs by the priority of each, and the least it could. */
  readonly cost: number;
  readonly costAtLeast: number;
}
