import type { Sourced } from '../../explain/formula.js';
import type { OwnJob, Priority, Progress, WorkConditions } from '../../farm/job.js';
import type { Round } from '../../tables/task-template.js';
import type { KeyDate } from '../tasks/event.js';
import type { Task, TripToBuy } from '../tasks/task.js';
import type { LearnedHours } from './learned-hours.js';

/** One piece of work, in days from today. */
export interface WorkNeed {
  readonly key: string;
  readonly name: string;
  /** Done again and again between morning and evening: for somebody who is in the house, where there is one. */
  readonly isThroughTheDay?: true;
  /** What it belongs to: a batch, a herd, or nothing but the household. */
  readonly belongsTo?: {
    readonly kind: 'batch' | 'herd';
    readonly id: string;
    readonly name: string;
  };
  /** Kind of work by its template, whichever batch or herd it is for; own work has none. */
  readonly kind?: string;
  /** Work of each person who takes part: your own figure, else as the log of this kind has it. */
  readonly hours: number;
  /** What the table or the job says, whatever was said and logged. */
  readonly reckonedHours: number;
  /** Hours of each that are done, and taken off. */
  readonly hoursDone?: number;
  /** What the table or the job says without the log; left out where nothing was logged. */
  readonly learned?: LearnedHours & { readonly reckonedHours: number };
  /** The hours were given for this piece of work itself. */
  readonly hasOwnHours?: true;
  readonly fromDay: number;
  readonly dueDay: number;
  readonly untilDay: number;
  readonly conditions: WorkConditions;
  /** Whether it is done in the soil, where its fields say so; of other own work only its name tells. */
  readonly isInSoil?: boolean;
  readonly canBeSpread: boolean;
  /** It has one day and never had more: done in one go or not at all. */
  readonly isOfOneDay?: true;
  /** Smallest useful piece of it, where the household said one. */
  readonly smallestPieceHours?: number;
  readonly priority: Priority;
  readonly personIds?: readonly string[];
  readonly forWhom?: OwnJob['forWhom'];
  readonly waitsFor: readonly {
    readonly key: string;
    readonly days: number;
    /** It is done within so many days after the other, where there is a way. */
    readonly atMostDays?: number;
    /** It waits for that only where that has a place. */
    readonly onlyIfPlaced?: true;
  }[];
  /** What should come first by its template, also where it does not wait for it. */
  readonly follows?: WorkNeed['waitsFor'];
  readonly ifLate?: string;
  /** What is bought on it, where it is the next trip for feed. */
  readonly buys?: TripToBuy;
  /** Animals cannot do without it: it comes first where hours are short. */
  readonly animalsNeedIt?: true;
  /** What depends on it is the meat. */
  readonly isForMeat?: true;
  /** It takes the hours of its one day, though it had others: no day had them. */
  readonly isBoundToADay?: true;
  /** Names of what should come first and has no place: it is done without. */
  readonly doneWithout?: readonly string[];
  /** What it was for is over once its last day is past: where it has no place, nothing waits for it. */
  readonly lapses?: true;
  /** It is of no use after the event it makes ready for. */
  readonly isBeforeEvent?: true;
  /** Last day on which it is of use, where that is before an event. */
  readonly lastUseDay?: number;
  /** Its own day, where it was put on a later one with what it follows. */
  readonly setDay?: number;
  /** That event, where animals come or go out: they can come later. */
  readonly prepares?: KeyDate & { readonly kind: Task['event'] };
  /** Last day of the dry spell in which what it waits for was done. */
  readonly spellUntilDay?: number;
  /** What it puts out is harmed by a night at or below this, °C. */
  readonly harmedAtOrBelowC?: number;
  /** What is picked waits for so many days after it. */
  readonly isRawManure?: true;
  /** Its time is past, so that it is only known where something was said of it. */
  readonly isOver?: boolean;
  /** What the hours of its template rest on; own jobs have hours of the household's own. */
  readonly row: Sourced;
}

/** Work that comes every day, or on most, between two days and takes its hours first. */
export interface PlannedChore {
  readonly key: string;
  readonly name: string;
  /** What it is called on a day, where days differ: into which paddock. */
  readonly nameOn?: ReadonlyMap<number, string>;
  /** Batch or herd it is done for; the household's own has none. */
  readonly belongsTo?: NonNullable<WorkNeed['belongsTo']>;
  readonly hoursPerDay: number;
  readonly fromDay: number;
  readonly toDay: number;
  /** The days of them on which it comes; left out, every one. */
  readonly onDays?: ReadonlySet<number>;
  /** Rounds of the day on which it is done. */
  readonly rounds?: readonly Round[];
  /** Of each animal, where it comes when one does and its hours are those of an average day. */
  readonly hoursEach?: number;
  readonly conditions?: WorkConditions;
  readonly personIds?: readonly string[];
  readonly forWhom?: OwnJob['forWhom'];
  readonly row: Sourced;
}

/** Somebody looks at animals at least every so many hours by day, from one day to another. */
export interface LookNeed {
  /** Batch or herd it is for. */
  readonly of: { readonly id: string; readonly name: string };
  readonly everyH: number;
  readonly fromDay: number;
  readonly toDay: number;
  /** So often because drinkers, as the household gave them, last no longer. */
  readonly isOfDrinkers?: true;
  /** So often because one may calve: only while a cow shows that she is near. */
  readonly isOfCalving?: true;
}

/** What is sent on keeps no more of a row than how that is supported. */
export const sourcedOf = ({ sources, mark }: Sourced): Sourced => ({ sources, mark });

/** What needs are read into, and by what. */
export interface Reading {
  readonly days: number;
  readonly learned: ReadonlyMap<string, LearnedHours>;
  readonly marks: ReadonlyMap<string, Progress>;
  readonly needs: WorkNeed[];
  readonly chores: PlannedChore[];
  readonly looks: LookNeed[];
}
