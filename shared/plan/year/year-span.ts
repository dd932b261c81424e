import {
  addDays,
  daysBetween,
  monthOf,
  yearOf,
  type PlainDate,
} from '../../calendar/plain-date.js';

/** The days of a strip: from a day on until the day after its last. */
export interface YearSpan {
  readonly from: PlainDate;
  readonly until: PlainDate;
  readonly days: number;
}

const MONTHS = 13;

/** Thirteen whole months: the one it is, and twelve on. */
export function yearSpan(today: PlainDate): YearSpan {
  const from = `${today.slice(0, 8)}01`;
  const until = monthsAfter(from, MONTHS);
  return { from, until, days: daysBetween(from, until) };
}

/** First days of the months of a strip. */
export const monthsOf = ({ from }: YearSpan): PlainDate[] =>
  Array.from({ length: MONTHS }, (_, k) => monthsAfter(from, k));

/** Halves of the months of a strip that are not over: to the 15th, and to the end. */
export const halfMonthsOf = (span: YearSpan, today: PlainDate): YearSpan[] =>
  monthsOf(span)
    .flatMap((first) => [
      between(first, addDays(first, HALF_DAYS)),
      between(addDays(first, HALF_DAYS), monthsAfter(first, 1)),
    ])
    .filter(({ until }) => today < until);

const HALF_DAYS = 15;

const between = (from: PlainDate, until: PlainDate): YearSpan => ({
  from,
  until,
  days: daysBetween(from, until),
});

/** The first of a month so many months on. */
function monthsAfter(first: PlainDate, count: number): PlainDate {
  const months = 12 * yearOf(first) + monthOf(first) - 1 + count;
  const month = `${(months % 12) + 1}`.padStart(2, '0');
  return `${Math.floor(months / 12)}-${month}-01`;
}
