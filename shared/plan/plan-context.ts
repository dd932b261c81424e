import { contextTo, type PlanContext } from './context.js';
import type { PlanRequest } from './request.js';
import { ageWithHands, isTighter } from './wait-for-hands.js';

/** A batch as it lives and ends: birds that weigh enough before there are hands for them wait for these. */
export function planContext(asked: PlanRequest): PlanContext {
  const planned = contextTo(asked);
  const ageDays = ageWithHands(planned);
  if (ageDays === undefined) return planned;
  const waiting = contextTo(asked, ageDays);
  return isTighter(waiting, planned) ? planned : waiting;
}
