import { daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { PasturePlan } from './pasture-plan.js';

/**
 * The height that a plan expects in a paddock on a day, cm, by which one that is typed for it is
 * asked about. Of a day before the plan it is known only where a height of that day was left out:
 * what stands today says nothing of what stood then.
 */
export function expectedHeight(
  plan: PasturePlan,
  paddockId: string,
  date: PlainDate,
): number | undefined {
  const leftOut = plan.leftOut?.find((own) => own.paddockId === paddockId && own.date === date);
  if (leftOut) return leftOut.expectedCm;
  const part = plan.paddocks.find(({ id }) => id === paddockId);
  if (!part || date < plan.today) return undefined;
  const day = Math.max(0, daysBetween(plan.from, date));
  const mass = 0 < day ? part.massByDay[day] : part.mass.value;
  return mass === undefined ? undefined : mass / part.perCm.value;
}
