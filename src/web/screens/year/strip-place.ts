import type { CSSProperties } from 'react';
import { daysBetween } from '../../../../shared/calendar/plain-date.js';
import type { YearSpan } from '../../../../shared/plan/year/year-span.js';

/** How far along a strip a day begins, percent of its length. */
export const along = ({ from, days }: YearSpan, date: string): number =>
  (100 * daysBetween(from, date)) / days;

/** Where a stretch of days lies on a strip, cut at its ends; undefined outside it. */
export function placeOf(
  span: YearSpan,
  bar: { readonly from: string; readonly until: string },
): CSSProperties | undefined {
  const left = Math.max(0, along(span, bar.from));
  const right = Math.min(100, along(span, bar.until));
  return left < right ? { left: `${left}%`, width: `${right - left}%` } : undefined;
}

/** Whether a day lies on a strip. */
export const isOn = ({ from, until }: YearSpan, date: string): boolean =>
  from <= date && date < until;
