import { daysBetween, yearOf, type PlainDate } from '../../calendar/plain-date.js';
import type { PastureRequest } from './pasture-request.js';

/** A grazing year: grass is followed from late winter to early winter. */
export interface PastureSpan {
  /** Day 0: soil water and growth are followed from here. */
  readonly first: PlainDate;
  /** Late winter: from here on grass may grow. */
  readonly opens: PlainDate;
  /** To the end of the season at least: what a stand comes out of winter with, its last weeks say. */
  readonly days: number;
  /** To the end of the season alone: a plan may go on into the winter. */
  readonly seasonDays: number;
  /** Index of the first day that is planned, and of the day after the last. */
  readonly from: number;
  readonly to: number;
}

/** Days after which a day of the grazing year comes again. */
export const YEAR = 365;

/** Grass is followed from mid-winter, when its year begins, and planned from late winter. */
const NORTH = { begins: '01-01', planned: '03-01', ends: '12-15', turns: '11-01' };
const SOUTH = { begins: '07-01', planned: '09-01', ends: '06-15', turns: '05-01' };

/**
 * The season to plan: this one until it is nearly over, then the next.
 *
 * A season south of the equator begins in September and ends in the next year.
 */
export function pastureSpan({
  farm,
  today,
  choices,
}: Pick<PastureRequest, 'farm' | 'today' | 'choices'>): PastureSpan {
  const year = yearOf(today);
  const isSouth = farm.latitudeDeg < 0;
  const dates = isSouth ? SOUTH : NORTH;
  const beginYear = isSouth
    ? today < `${year}-${dates.turns}`
      ? year - 1
      : year
    : today < `${year}-${dates.turns}`
      ? year
      : year + 1;
  const first = earliest(`${beginYear}-${dates.begins}`, choices.from);
  const wholeEnd = `${beginYear + (isSouth ? 1 : 0)}-${dates.ends}`;
  const end = choices.to ?? wholeEnd;
  const planned = `${beginYear}-${dates.planned}`;
  const from = choices.from ?? (today < planned ? planned : today);
  return {
    first,
    opens: planned,
    seasonDays: daysBetween(first, wholeEnd) + 1,
    days: daysBetween(first, end < wholeEnd ? wholeEnd : end) + 1,
    from: daysBetween(first, from),
    to: daysBetween(first, end) + 1,
  };
}

/** Index of the day of a reading; below 0 where it was taken before the year began. */
export const dayIn = (
  { first }: Pick<PastureSpan, 'first'>,
  { date }: { readonly date: PlainDate },
): number => daysBetween(first, date);

/** Whether cattle that are there are on hay: no grazing year has begun, and the last one is over. */
export const isWinter = (of: Pick<PastureRequest, 'farm' | 'today'>): boolean =>
  of.today < pastureSpan({ ...of, choices: {} }).opens;

const earliest = (a: PlainDate, b: PlainDate | undefined): PlainDate =>
  b !== undefined && b < a ? b : a;
