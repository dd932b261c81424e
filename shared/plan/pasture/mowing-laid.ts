import type { PlainDate } from '../../calendar/plain-date.js';
import type { KeptPlan } from '../../farm/kept-plan.js';
import type { PasturePlan } from './pasture-plan.js';
import type { Surplus } from './surplus.js';

/**
 * Day on which the plan of the work mows a paddock; undefined where it lays none yet. The plan of the
 * grass counts a cut on the first day it may be made: that plan comes first, the work is fitted to it.
 */
export function mowingLaid(
  { mowingWork, today }: PasturePlan,
  [kept]: readonly KeptPlan[],
  { paddockId, mowFrom }: Surplus,
): PlainDate | undefined {
  const work = mowingWork.find(
    ({ paddockIds, from, isLeftLying }) =>
      !isLeftLying && from === mowFrom && paddockIds.includes(paddockId),
  );
  const job = work && kept?.jobs[work.key];
  if (!job || job.lostMinutes !== undefined) return undefined;
  const [day] = job.pieces.map(({ date }) => date).sort();
  return day !== undefined && today <= day && mowFrom <= day ? day : undefined;
}
