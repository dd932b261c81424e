import { addDays, daysBetween, type PlainDate } from '../calendar/plain-date.js';

/** Furthest arrival from today that is planned for, days: two seasons ahead, or back. */
export const FURTHEST_DAYS = 1100;

/** Whether a batch came so long ago that it is history: nothing of it is still to be done. */
export const isHistory = (arrivalDate: PlainDate, today: PlainDate): boolean =>
  FURTHEST_DAYS < daysBetween(arrivalDate, today);

/** The day from which a saved batch is planned: today, or for one of long ago the day it came. */
export const planningDay = (arrivalDate: PlainDate, today: PlainDate): PlainDate =>
  isHistory(arrivalDate, today) ? arrivalDate : today;

/** Grass is planned by this season and the one before it. */
const SEASONS_DAYS = 2 * 366;

/** The day before which what was told of grass, or of birds long gone, moves no plan. */
export const seasonsSince = (today: PlainDate): PlainDate => addDays(today, -SEASONS_DAYS);
