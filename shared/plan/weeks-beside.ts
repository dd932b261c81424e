import { addDays, daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { ArrivalWeek } from './arrival-finder.js';

/** A week some time before or after another, and what speaks more against it. */
export interface WeekBeside {
  readonly arrivalDate: PlainDate;
  /** Left out where nothing does. */
  readonly against?: string;
}

const APART_DAYS = 28;
const HALF_A_WEEK = 3;
/** Arrivals so many days before and after are looked at. */
export const SEEN_BESIDE_DAYS = APART_DAYS + HALF_A_WEEK;
/** Fewer are a shade of the same. */
const LEAST_POINTS = 5;

/**
 * The weeks four before and four after the one that was taken, each with the reason that takes the
 * most off it beyond what it takes off that one. A week that was not looked at is left out.
 */
export const weeksBeside = (weeks: readonly ArrivalWeek[], own: ArrivalWeek): WeekBeside[] =>
  [-APART_DAYS, APART_DAYS].flatMap((apart): WeekBeside[] => {
    const day = addDays(own.arrivalDate, apart);
    const week = weeks.find(
      ({ arrivalDate }) => Math.abs(daysBetween(day, arrivalDate)) <= HALF_A_WEEK,
    );
    if (!week) return [];
    const { arrivalDate } = week;
    const [worst] = week.reasons
      .map(({ code, text }) => ({ text, more: pointsOf(week, code) - pointsOf(own, code) }))
      .sort((a, b) => b.more - a.more);
    return [
      { arrivalDate, ...(worst && LEAST_POINTS <= worst.more ? { against: worst.text } : {}) },
    ];
  });

/** What a reason takes off a week. */
export const pointsOf = ({ reasons }: ArrivalWeek, code: string): number =>
  reasons.reduce((sum, each) => (each.code === code ? sum + each.points : sum), 0);
