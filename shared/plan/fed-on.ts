import { daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { BatchPlan } from './batch-plan.js';

/** Days whose feed stands for those after the plan of hens. */
const LAST_DAYS = 7;

/**
 * Feed of a batch on a day, waste included, kg; 0 before it comes. Hens are taken to stay after the
 * days that are planned of them: they eat on as in the last week of these.
 */
export function fedOn(
  { arrivalDate, daily, purpose }: Pick<BatchPlan, 'arrivalDate' | 'daily' | 'purpose'>,
  date: PlainDate,
): number {
  const values = daily.find(({ id }) => id === 'feed-day')?.values ?? [];
  const day = daysBetween(arrivalDate, date);
  if (day < values.length || purpose !== 'layers') return values[day] ?? 0;
  return values.slice(-LAST_DAYS).reduce((sum, kg) => sum + kg, 0) / LAST_DAYS;
}
