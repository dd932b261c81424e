import { addDays, daysBetween, yearOf } from '../../calendar/plain-date.js';
import type { Paddock } from '../../farm/paddock.js';
import type { Tables } from '../../tables/tables.js';
import { frostDays } from '../place-frost.js';
import type { PastureRequest } from './pasture-request.js';
import type { PastureSpan } from './pasture-span.js';
import type { SeasonSward } from './season-swards.js';

/** Last day of a plan on which any paddock still grows. */
export function lastGrowingDay(
  swards: readonly SeasonSward[],
  span: PastureSpan,
  { judgements }: Tables,
): number {
  const least = judgements.grass.growsKgPerHa.value;
  let end = span.to - 1;
  while (span.from < end && swards.every(({ growth }) => growth[end]! < least)) end--;
  return end;
}

/**
 * Day that grass for fall is counted back from: the end of growth. Where grass still grows on the last
 * day of the plan, that day is nobody's end of growth: the first fall frost of the place stands for it.
 */
export function autumnDay(request: PastureRequest, span: PastureSpan, growthEnds: number): number {
  if (growthEnds < span.to - 1) return growthEnds;
  const { first } = frostDays(request, request.tables);
  const year = yearOf(span.first);
  const on = `${year}-${first}`;
  return daysBetween(span.first, on < span.first ? `${year + 1}-${first}` : on);
}

/** Day from which grass that is to stand into fall is left alone. */
export const autumnShutDay = (
  request: PastureRequest,
  span: PastureSpan,
  growthEnds: number,
): number =>
  autumnDay(request, span, growthEnds) - request.tables.pasture.stockpile.daysBeforeGrowthEnds;

/**
 * The paddocks of a request, those that are kept for fall shut until growth ends.
 *
 * A choice: shut paddocks are missed in late summer and grazed when nothing grows any more.
 */
export function withAutumnKept(
  request: PastureRequest,
  span: PastureSpan,
  growthEnds: number,
): readonly Paddock[] {
  const kept = request.choices.keepForAutumnIds ?? [];
  if (kept.length === 0) return request.paddocks;
  const from = Math.max(span.from, autumnShutDay(request, span, growthEnds));
  if (growthEnds <= from) return request.paddocks;
  const shut = {
    from: addDays(span.first, from),
    to: addDays(span.first, growthEnds),
    why: 'stockpile',
  } as const;
  return request.paddocks.map((paddock) =>
    kept.includes(paddock.id) ? { ...paddock, closedDays: [...paddock.closedDays, shut] } : paddock,
  );
}
