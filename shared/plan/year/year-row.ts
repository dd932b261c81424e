import type { PlainDate } from '../../calendar/plain-date.js';
import type { YearSpan } from './year-span.js';

/** What a stretch of days is to whoever it is of. */
export type BarKind =
  | 'eggs'
  | 'hen'
  | 'brooder'
  | 'pens'
  | 'coop'
  | 'laying'
  | 'freezer'
  | 'grass'
  | 'hay'
  | 'calving'
  | 'work'
  | 'away'
  | 'sitter';

/** A stretch of days, whole: it may begin before the strip and end after it. */
export interface YearBar {
  readonly kind: BarKind;
  readonly from: PlainDate;
  /** The first day on which it is over. */
  readonly until: PlainDate;
  /** What it is called here, where that is not what its kind says. */
  readonly words?: string;
}

/** A day that is written out. */
export interface YearDate {
  readonly on: PlainDate;
  readonly words: string;
  /** Of work that can be done later: the last day for it. */
  readonly dueBy?: PlainDate;
  /** What stands beside its number on the strip, where no line begins with it. */
  readonly mark?: string;
  /** Written in words only: on the strip it would stand on a date beside it. */
  readonly isInWords?: true;
}

/** One line of the strip: a batch, a herd, a set of jobs or somebody away. */
export interface YearRow {
  readonly kind: 'batch' | 'herd' | 'set' | 'away';
  /** Of the batch, the herd or the set; of all who are away, the person or the hand-over. */
  readonly id: string;
  readonly name: string;
  readonly bars: readonly YearBar[];
  readonly dates: readonly YearDate[];
  /** Feed to fetch: written out, and no turn of the line. */
  readonly feed?: readonly YearDate[];
  /** The arrival that can still be moved, of a batch that has not come. */
  readonly arrivesOn?: PlainDate;
}

/** Whether anything of a row lies within a strip. */
export const isInSight = ({ bars, dates }: YearRow, { from, until }: YearSpan): boolean =>
  bars.some((bar) => from < bar.until && bar.from < until) ||
  dates.some(({ on }) => from <= on && on < until);

/** Days one after the other. */
export const inOrder = (dates: readonly YearDate[]): YearDate[] =>
  [...dates].sort((a, b) => (a.on < b.on ? -1 : a.on === b.on ? 0 : 1));

/** The first date ahead, and whose it is; undefined where nothing is dated. */
export function firstAhead({
  rows,
  today,
}: {
  readonly rows: readonly YearRow[];
  readonly today: PlainDate;
}): { row: YearRow; date: YearDate } | undefined {
  const ahead = rows.flatMap((row) =>
    row.dates.filter(({ on }) => today <= on).map((date) => ({ row, date })),
  );
  return ahead.reduce<(typeof ahead)[number] | undefined>(
    (first, each) => (first && first.date.on <= each.date.on ? first : each),
    undefined,
  );
}
