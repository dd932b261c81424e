import { handsAsLong, type DayOfHands } from './hands-of-day.js';
import type { PlanContext } from './context.js';
import { daysUpTo, type ProcessingDay } from './processing-days.js';

/** A day, and how much longer each would have to be at it than there are hours. */
export interface LongerDay extends DayOfHands {
  readonly moreH: number;
}

/** Less than this past the hours there are is not worth a word. */
const SHORT_H = 0.2;

/** Hours more are said to so many parts of an hour, rounded up. */
const PARTS_OF_HOUR = 12;

const DAY_H = 24;

/**
 * Hours more for each with which a day holds so many birds, set up and cleaned down; none of them is
 * at it for longer than a long day, where such a day holds all.
 */
function moreHoursFor(context: PlanContext, day: DayOfHands, birds: number): number {
  if (birds <= day.most) return 0;
  const isBearable = birds <= day.mostLong;
  for (let parts = 1; parts < DAY_H * PARTS_OF_HOUR; parts++) {
    const moreH = parts / PARTS_OF_HOUR;
    if (birds <= handsAsLong(context, day, { moreH, isBearable })) return moreH;
  }
  return DAY_H;
}

/** Hours more for each than there are on the day that is longest past them; 0 where that is no word worth. */
export function longestMoreH(context: PlanContext, days: readonly ProcessingDay[]): number {
  const most = Math.max(0, ...days.map((day) => moreHoursFor(context, day, day.birds)));
  return most < SHORT_H ? 0 : most;
}

/** The day on which fewest hours more make it one day; undefined where no long day holds all. */
export function longerDayFor(context: PlanContext, birds: number): LongerDay | undefined {
  return daysUpTo(context)
    .filter(({ most, mostLong }) => most < birds && birds <= mostLong)
    .map((day) => ({ ...day, moreH: moreHoursFor(context, day, birds) }))
    .sort((a, b) => a.moreH - b.moreH)[0];
}
