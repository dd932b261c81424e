import { addDays, daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { Batch } from '../farm/batch.js';

/** Furthest arrival from today that is planned for, days: two seasons ahead, or back. */
export const FURTHEST_DAYS = 1100;

/** The same of hens back, days: some are kept for years after they lay well. */
const HENS_BACK_DAYS = 2200;

/** What says for how long a batch is planned. */
export type Kept = Pick<Batch, 'arrivalDate' | 'purpose'>;

/** Days after its arrival for which a batch is planned. */
export const daysBackOf = ({ purpose }: Pick<Kept, 'purpose'>): number =>
  purpose === 'layers' ? HENS_BACK_DAYS : FURTHEST_DAYS;

/** Whether a batch came so long ago that it is history: nothing of it is still to be done. */
export const isHistory = (batch: Kept, today: PlainDate): boolean =>
  daysBackOf(batch) < daysBetween(batch.arrivalDate, today);

/** The day from which a saved batch is planned: today, or for one of long ago the day it came. */
export const planningDay = (batch: Kept, today: PlainDate): PlainDate =>
  isHistory(batch, today) ? batch.arrivalDate : today;

/** Grass is planned by this season and the one before it. */
const SEASONS_DAYS = 2 * 366;

/** The day before which what was told of grass, or of birds long gone, moves no plan. */
export const seasonsSince = (today: PlainDate): PlainDate => addDays(today, -SEASONS_DAYS);
