import type { BatchPlan } from './batch-plan.js';

/** Days from the arrival on that have birds, and one more: split among days, all may be gone early. */
export function daysOfBirds({ daily }: Pick<BatchPlan, 'daily'>): number {
  const alive = daily.find(({ id }) => id === 'alive')?.values ?? daily[0]!.values;
  let days = alive.length;
  while (1 < days && alive[days - 2] === 0) days--;
  return days;
}
