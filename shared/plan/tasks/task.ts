import type { PlainDate } from '../../calendar/plain-date.js';
import type { Mark } from '../../explain/formula.js';
import type { WorkConditions } from '../../farm/job.js';
import type { EventKind } from '../../tables/task-template.js';

/** The first feed of birds that come: it is in the house the day before. */
export interface FirstFeed {
  readonly name: string;
  readonly batchId: string;
  readonly by: PlainDate;
  /** The first day on which it can be had, whoever has the hours to go. */
  readonly soonest: PlainDate;
}

/** What somebody brings home from a trip, as it is told when it is done. */
export interface TripToBuy {
  readonly from?: string;
  /** The first day for it, by the plan of the year’s feed. */
  readonly on: PlainDate;
  /** The first feed of birds that it can bring only after the day by which it is to be there. */
  readonly tooLateFor?: FirstFeed;
  readonly lines: readonly {
    readonly what: 'feed' | 'minerals';
    readonly name: string;
    /** How many bags or blocks. */
    readonly amount: number;
    readonly eachKg: number;
    /** Of all of them, decimal text; left out where no price is known. */
    readonly money?: string;
  }[];
}

/** Work that a batch or a herd asks for, on its dates. */
export interface Task {
  /** Among the tasks of its batch or herd; stays what it is when dates move. */
  readonly id: string;
  readonly templateId: string;
  readonly name: string;
  /** Batch or herd it is done for; left out for a batch that has no id yet. */
  readonly belongsToId?: string;
  readonly event: EventKind;
  /** Days from that event, before it was pulled forward for what waits. */
  readonly offsetDays: number;

  /** First day it is of use, where that is before its start. */
  readonly earliestStart?: PlainDate;
  readonly start: PlainDate;
  readonly end: PlainDate;
  readonly latestStart: PlainDate;
  readonly spareDays: number;
  readonly alreadyLate: boolean;
  readonly overdue: boolean;
  /** Last day it is of use, where it must be done before its event. */
  readonly noUseAfter?: PlainDate;
  /** Its time is past: the birds are there without it, or its last day is over. */
  readonly isOver?: boolean;
  /** Something that was told leaves nothing of it to do, on whatever day it is planned. */
  readonly isSettled?: boolean;
  /** Days it may be done after its day without loss. */
  readonly mayFollowDays?: number;
  /** Days over which its hours come, a part with each animal. */
  readonly spreadOver?: { readonly from: PlainDate; readonly to: PlainDate };
  /** Why it cannot be left until the last moment. */
  readonly leadNote?: string;

  /** In all; opened by `taskHours`. */
  readonly hours: number;
  /** What helpers do of those hours, and how many they are: none of it is the household's. */
  readonly helped?: { readonly hours: number; readonly helpers: number };
  /** How many of its template's unit of work: hundreds of birds, tens of head, acres. */
  readonly units: number;
  /** Days the hours are counted for: 1, or the days of daily work. */
  readonly days: number;
  /** Daily work, which takes its hours every day from start to end. */
  readonly isDaily: boolean;
  /** Daily work that goes on after its end while the birds are there. */
  readonly goesOn?: boolean;
  /** Not spread over days. */
  readonly notSplit?: boolean;

  readonly needs?: string;
  readonly conditions?: WorkConditions;
  /** Only done when weather or grass asks for it. */
  readonly onDemand?: boolean;

  /** Tasks of the same batch or herd that come first, and the days to wait after each. */
  readonly waits: readonly {
    readonly id: string;
    readonly days: number;
    readonly atMostDays?: number;
    /** It waits for that only where that has a place. */
    readonly onlyIfPlaced?: true;
  }[];
  /** What it waits for in words, people outside the household too. */
  readonly waitsFor: readonly string[];
  readonly ifLate: string;
  /** What it does to do it too soon. */
  readonly ifEarly?: string;
  /** What is bought on it, where it is a trip for feed. */
  readonly buys?: TripToBuy;
  readonly mark: Mark;
}

/** Whether a task should have been begun, and the last day of it is past as well. */
export const isPastItsDay = (
  { alreadyLate, end }: Pick<Task, 'alreadyLate' | 'end'>,
  today: PlainDate,
): boolean => alreadyLate && end < today;
