import type { PlainDate } from '../calendar/plain-date.js';

/** What a day must be like for a job; what is left out does not matter. */
export interface WorkConditions {
  readonly noRain?: boolean;
  /** Ground dry enough to work or to drive posts into. */
  readonly dryGround?: boolean;
  readonly daylight?: boolean;
  readonly dayMaxAtLeastC?: number;
  readonly dayMaxAtMostC?: number;
  readonly nightMinAtLeastC?: number;
  /** People needed at once. */
  readonly people?: number;
}

export type Importance = 'must' | 'should' | 'could';

/** Work the household sets itself: a bed, a fence, a hive. */
export interface OwnJob {
  readonly id: string;
  readonly name: string;
  /** Work of each person who takes part. */
  readonly hours: number;
  readonly notBefore?: PlainDate;
  readonly dueOn: PlainDate;
  /** After this day it is lost for the year; left out, it only gets later. */
  readonly lastOn?: PlainDate;
  readonly importance: Importance;
  readonly conditions: WorkConditions;
  /** It may be spread over days. */
  readonly canBeSpread: boolean;
  /** Those who can do it; left out, everyone. */
  readonly personIds?: readonly string[];
  /** Another own job that is done first, and the days to wait after it. */
  readonly waitsForId?: string;
  readonly waitDays?: number;
  readonly ifLate?: string;
  /** An event that its dates move along with, and the day of it on which they were given. */
  readonly hangsOn?: { readonly eventId: string; readonly on: PlainDate };
  /** The ready-made set it came with. */
  readonly setId?: string;
}

/** What became of a piece of work: ticked off, or put off. */
export interface WorkMark {
  readonly key: string;
  readonly doneOn?: PlainDate;
  readonly notBefore?: PlainDate;
  /** Hours of each that are done of it while the rest is still open. */
  readonly hoursDone?: number;
  /** What it really took, each person, when it was done. */
  readonly hours?: number;
  /** What it had been reckoned at without the log, and the kind of work it is. */
  readonly reckonedHours?: number;
  readonly kind?: string;
}
