import { daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { BatchPlan } from './batch-plan.js';
import { dayInPlan, type DatedPlan } from './day-in-plan.js';

/** What tells what a batch is fed on each day. */
export type FedPlan = DatedPlan & Pick<BatchPlan, 'daily'>;

/** Feed of a batch on a day, waste included, kg; 0 while there are no birds. */
export function fedOn(plan: FedPlan, date: PlainDate): number {
  const told = dayInPlan(plan, date);
  const values = plan.daily.find(({ id }) => id === 'feed-day')?.values;
  return (told !== undefined && values?.[daysBetween(plan.arrivalDate, told)]) || 0;
}
