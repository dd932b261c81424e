import type { PlainDate } from '../../shared/calendar/plain-date.js';
import type { Batch, Purpose } from '../../shared/farm/batch.js';
import type { Cow } from '../../shared/farm/cow.js';
import type { Facility } from '../../shared/farm/facility.js';
import type { Farm, Person } from '../../shared/farm/farm.js';
import type { Handover } from '../../shared/farm/handover.js';
import type { CattleGroup, Herd } from '../../shared/farm/herd.js';
import type { OwnJob } from '../../shared/farm/job.js';
import type { Paddock } from '../../shared/farm/paddock.js';
import type { Product } from '../../shared/farm/product.js';
import type { Bought } from '../../shared/farm/season-facts.js';
import type { Supplier } from '../../shared/farm/supplier.js';
import type { JobSet } from '../../shared/tables/job-sets.js';

/** The day on which a sample is made, and what makes its ids its own. */
export interface MadeAt {
  readonly today: PlainDate;
  readonly jobSets: readonly JobSet[];
  readonly suffix: string;
}

/** A month and day such as 05-20. */
type MonthDay = string;

/** The sample as it lies in seeds/: dates are month-days, or days from the day it is made. */
export interface SampleSeed {
  readonly farm: Farm;
  readonly facilities: readonly Facility[];
  readonly suppliers: readonly Supplier[];
  readonly products: readonly SampleProduct[];
  readonly people: readonly Omit<Person, 'away'>[];
  readonly batches: readonly SampleBatch[];
  readonly paddocks: readonly Paddock[];
  readonly walks: readonly SampleWalk[];
  readonly herds: readonly SampleHerd[];
  readonly cows: readonly Cow[];
  readonly jobs: readonly (SampleJob | WeeklyJob)[];
  readonly sets: readonly SampleSet[];
  readonly away: SampleAway;
  readonly told: SampleTold;
}

/** Bags in store were counted so many days before the day it is made. */
export type SampleProduct = Product & { readonly storeDaysAgo?: number };

export type BatchWithId = Batch & { readonly id: string };

export interface SampleBatch extends Omit<BatchWithId, 'arrivalDate'> {
  /** Comes every year on that day, and is kept for so many days before the next one takes its place. */
  readonly arrival: {
    readonly monthDay: MonthDay;
    readonly keptDays: number;
    /** The one of the year before: hens that lay while the next pullets grow up. */
    readonly yearsBefore?: number;
  };
}

/** The last pasture walk, from a day of the year on; without heights nobody walks in that season. */
export interface SampleWalk {
  readonly from: MonthDay;
  readonly daysAgo: number;
  /** Of the paddock that the herd is in or comes to first, and of those after it in turn. */
  readonly heightsCm: readonly number[];
  /** The herd has been on grass since then, so many days in each paddock; left out, it is on hay. */
  readonly grazing?: { readonly since: MonthDay; readonly stayDays: number };
}

interface SampleGroup extends CattleGroup {
  readonly calves?: MonthDay;
  /** With their calves they are of another class. */
  readonly nursing?: { readonly from: MonthDay; readonly to: MonthDay; readonly classId: string };
}
export type SampleHerd = Omit<Herd, 'groups'> & { readonly groups: readonly SampleGroup[] };

/** Work of one time in the year. */
export interface SampleJob extends Omit<OwnJob, 'dueOn' | 'notBefore'> {
  readonly due: MonthDay;
  readonly windowDays: number;
}

/** Work of a day of every week, 1 Monday to 7 Sunday. */
export interface WeeklyJob extends Omit<OwnJob, 'dueOn' | 'notBefore'> {
  readonly weekday: number;
}

/** A ready-made set that the household took, until so many days after its date. */
export interface SampleSet {
  readonly setId: string;
  readonly anchor: MonthDay;
  readonly keptDays: number;
  readonly count: number;
}

/** Days away, from the first such weekday that is clear of chicks that come and birds that leave. */
export interface SampleAway extends Pick<Handover, 'phones' | 'whereabouts'> {
  readonly hoursPerDay: number;
  readonly afterDays: number;
  readonly weekday: number;
  readonly days: number;
  readonly clearOfArrivalDays: number;
  readonly clearOfLeavingDays: number;
  readonly sitter: string;
  readonly notes: string;
}

/** What the household wrote down. */
export interface SampleTold {
  /** Birds put on a scale at an age. */
  readonly weighed: readonly {
    readonly purpose: Purpose;
    readonly ageDays: number;
    readonly birds: number;
    readonly averageKg: number;
  }[];
  /** Eggs of a week, from so many days after arrival on. */
  readonly eggs: readonly { readonly fromDays: number; readonly perWeek: number }[];
  /** Bags opened for a batch at ages, or every so many days of the last weeks. */
  readonly opened: readonly {
    readonly batchId: string;
    readonly ageDays?: readonly number[];
    readonly every?: { readonly days: number; readonly times: number };
  }[];
  /** Receipts for feed of every year, on their days or the next ones on which the seller is open. */
  readonly receipts: readonly SampleReceipt[];
}

export interface SampleReceipt {
  readonly monthDay: MonthDay;
  /** As often again, every so many days. */
  readonly again?: { readonly days: number; readonly times: number };
  readonly from: string;
  readonly lines: readonly {
    readonly what: Bought['what'];
    readonly name: string;
    readonly amount: number;
    readonly eachKg?: number;
    readonly money: string;
  }[];
}

/**
 * Reads the sample. Ids of its rows stand behind an @ and are made unique, so that it can be loaded
 * more than once.
 */
export const readSample = (text: string, suffix: string): SampleSeed =>
  JSON.parse(text, (_key, value: unknown) =>
    typeof value === 'string' && value.startsWith('@') ? `${value.slice(1)}-${suffix}` : value,
  ) as SampleSeed;
