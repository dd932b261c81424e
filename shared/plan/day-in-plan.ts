import { addDays, daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { BatchPlan } from './batch-plan.js';

const YEAR_DAYS = 365;
/** Days from the first egg on in which a young flock comes into lay: no measure of later ones. */
const COMING_INTO_LAY_DAYS = 56;

/** Days past their last one on which birds may be there still, as nobody told otherwise. */
export interface StillHere {
  readonly since: PlainDate;
  readonly until: PlainDate;
}

/** What tells on which days a batch is there. */
export type DatedPlan = Pick<
  BatchPlan,
  'arrivalDate' | 'lastDate' | 'leaving' | 'laying' | 'purpose' | 'birds'
> & { readonly stillHere?: StillHere };

/**
 * The day of a batch's plan by which its birds are told on a date: the date itself while it is
 * planned. Hens are still there after it: they are told by the same day of the last year planned, or
 * by its last day where they had only begun to lay. Undefined before birds come and once they are gone.
 */
export function dayInPlan(plan: DatedPlan, date: PlainDate): PlainDate | undefined {
  if (date < plan.arrivalDate) return undefined;
  const { stillHere } = plan;
  if (stillHere && stillHere.since <= date)
    return date <= stillHere.until ? addDays(stillHere.since, -1) : undefined;
  const last = plan.leaving ? String(plan.leaving.on.value) : plan.lastDate;
  if (date <= last) return isGone(plan, date) ? undefined : date;
  if (plan.purpose !== 'layers' || isGone(plan, last)) return undefined;
  const years = Math.ceil(daysBetween(last, date) / YEAR_DAYS);
  const before = addDays(date, -years * YEAR_DAYS);
  const settled = addDays(String(plan.laying!.firstEgg.value), COMING_INTO_LAY_DAYS);
  return before < settled ? last : before;
}

/** Whether the last of them was told to have gone before a date. */
function isGone({ birds }: DatedPlan, date: PlainDate): boolean {
  const lastOn = birds.counted?.lastLeftOn;
  return lastOn !== undefined && lastOn < date;
}
