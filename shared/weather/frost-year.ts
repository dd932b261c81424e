import { addDays, dayOfYear } from '../calendar/plain-date.js';
import type { YearOfLows } from './by-frost-dates.js';
import { chancesOfAnyBelow } from './night-chances.js';

const DAYS = 366;
const LEAP_YEAR = 2024;

/** Month and day of a turning point of the year: when it usually is, and when it is safe. */
export interface FrostTurn {
  /** As many years have it later as earlier. */
  readonly usual: string;
  /** Past it (in fall: before it) frost comes in few years only. */
  readonly safe: string;
}

/** The end and the beginning of frost in a year; a turn is left out where it does not come. */
export interface FrostYear {
  readonly last?: FrostTurn;
  readonly first?: FrostTurn;
}

/**
 * When frost ends and begins, by the lows of a year: counted from its warmest night back to spring
 * and on to fall, the day from which on the chance of a frost reaches a half, and a smaller share.
 *
 * Left out: a place where even the middle of summer freezes more often than that has no such day.
 * Source: a chain over nights as in `night-chances.ts`.
 *
 * @param asked the low that counts as a frost, and the share of years that is called few, 0 to 0.5
 */
export function frostYear(
  { lowC, sdC }: YearOfLows,
  { atOrBelowC, fewShare, likeness }: { atOrBelowC: number; fewShare: number; likeness: number },
): FrostYear {
  const warmest = lowC.reduce((best, c, day) => (lowC[best]! < c ? day : best), 0);
  const zOf = (step: 1 | -1) => (k: number) => {
    const day = (((warmest + step * k) % DAYS) + DAYS) % DAYS;
    return (atOrBelowC - lowC[day]!) / sdC[day]!;
  };
  const turn = (step: 1 | -1): FrostTurn | undefined => {
    // Nights from the warmest one to the first with which the chance of a frost reaches a share.
    const chances = chancesOfAnyBelow(DAYS / 2 + 1, zOf(step), likeness);
    const [usual, safe] = [0.5, fewShare].map((share) =>
      chances.findIndex((chance) => share <= chance),
    ) as [number, number];
    if (usual < 0 || safe <= 0) return undefined;
    return { usual: monthDay(warmest + step * usual), safe: monthDay(warmest + step * safe) };
  };
  const [last, first] = [turn(-1), turn(1)];
  return { ...(last ? { last } : {}), ...(first ? { first } : {}) };
}

const monthDay = (day: number): string =>
  addDays(`${LEAP_YEAR}-01-01`, (day + 2 * DAYS) % DAYS).slice(5);

/** Days from a turn of the year, usual or safe, to the day of it that the household knows. */
export const ownDayApart = (turn: FrostTurn, own: string, isSafe: boolean): number =>
  dayOf(own) - dayOf(isSafe ? turn.safe : turn.usual);

/** A turn of the year so many days later; its two days stay as far apart. */
export function movedBy({ usual, safe }: FrostTurn, days: number): FrostTurn {
  const moved = (day: string): string => monthDay(dayOf(day) + days);
  return { usual: moved(usual), safe: moved(safe) };
}

const dayOf = (day: string): number => dayOfYear(`${LEAP_YEAR}-${day}`) - 1;
