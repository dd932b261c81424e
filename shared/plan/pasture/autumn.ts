import { addDays } from '../../calendar/plain-date.js';
import type { Paddock } from '../../farm/paddock.js';
import type { Tables } from '../../tables/tables.js';
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

/** Day from which grass that is to stand into fall is left alone. */
export const autumnShutDay = ({ tables }: PastureRequest, growthEnds: number): number =>
  growthEnds - tables.pasture.stockpile.daysBeforeGrowthEnds;

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
  const from = Math.max(span.from, autumnShutDay(request, growthEnds));
  if (kept.length === 0 || growthEnds <= from) return request.paddocks;
  const shut = {
    from: addDays(span.first, from),
    to: addDays(span.first, growthEnds),
    why: 'stockpile',
  } as const;
  return request.paddocks.map((paddock) =>
    kept.includes(paddock.id) ? { ...paddock, closedDays: [...paddock.closedDays, shut] } : paddock,
  );
}
