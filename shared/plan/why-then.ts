import { addDays, weekdayOf } from '../calendar/plain-date.js';
import type { FarmPicture } from '../farm/picture.js';
import type { Tables } from '../tables/tables.js';
import { findArrivals } from './arrival-finder.js';
import { pointsOf, weeksBeside, type WeekBeside } from './weeks-beside.js';

const YEAR_DAYS = 363;

/** Why a batch comes when it does. */
export interface WhyBest {
  /** What speaks most for it; left out where no reason takes more off other weeks. */
  readonly because?: string;
  /** Whether that takes points off this week too, though more off the others: by itself it sounds like no reason. */
  readonly isOnlyLess?: boolean;
  /** Weeks before and after it, with what speaks against them. */
  readonly beside: readonly WeekBeside[];
}

/**
 * What speaks most for the week in which a batch comes against the other weeks of the year from
 * today on, and what speaks against the weeks before and after it; undefined where it has no plan.
 *
 * @throws FieldError as `findArrivals` does
 */
export function whyBest(
  picture: FarmPicture,
  tables: Tables,
  batchId: string,
): WhyBest | undefined {
  const { arrivalDate } = picture.batches.find(({ id }) => id === batchId)!;
  const weekday = weekdayOf(arrivalDate);
  const [own] = findArrivals(picture, tables, batchId, {
    from: arrivalDate,
    to: arrivalDate,
    weekday,
  });
  if (!own) return undefined;
  const from = addDays(picture.today, tables.judgements.arrival.usualLeadDays.value);
  const weeks = findArrivals(picture, tables, batchId, { from, to: addDays(from, YEAR_DAYS) });
  const [most] = own.reasons
    .map(({ code, text }) => ({
      text,
      speaksAgainst: 0 < pointsOf(own, code),
      gain:
        weeks.reduce((sum, week) => sum + pointsOf(week, code), 0) / weeks.length -
        pointsOf(own, code),
    }))
    .sort((a, b) => b.gain - a.gain);
  return {
    ...(most && 0 < most.gain ? { because: most.text, isOnlyLess: most.speaksAgainst } : {}),
    beside: weeksBeside(weeks, own),
  };
}
