import type { PlanContext } from './context.js';
import { birdsToProcess } from './leaving-weights.js';
import { shareStillThere } from './processing-days.js';

/**
 * A value of the whole flock by day without what birds have of it that are processed before the
 * others.
 */
export function withoutThoseGone(context: PlanContext, ofFlock: Float64Array): Float64Array {
  if (context.batch.purpose !== 'meat') return ofFlock;
  const share = shareStillThere(context, birdsToProcess(context.life));
  return ofFlock.map((value, day) => value * share[day]!);
}
