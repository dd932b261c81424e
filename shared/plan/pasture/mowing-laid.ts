import type { PlainDate } from '../../calendar/plain-date.js';
import type { PasturePlan } from './pasture-plan.js';
import type { Surplus } from './surplus.js';

/** Days that the plan of the work has found, by the keys of work. */
export type DaysOfMowing = ReadonlyMap<string, { readonly on: PlainDate }>;

/**
 * Day on which the plan of the work mows a paddock; undefined where it lays none yet. The plan of the
 * grass counts a cut on the first day it may be made: that plan comes first, the work is fitted to it.
 */
export function mowingLaid(
  { mowingWork }: PasturePlan,
  days: DaysOfMowing | undefined,
  { paddockId, mowFrom }: Surplus,
): PlainDate | undefined {
  const work = mowingWork.find(
    ({ paddockIds, from, isLeftLying }) =>
      !isLeftLying && from === mowFrom && paddockIds.includes(paddockId),
  );
  const on = work && days?.get(work.key)?.on;
  return on !== undefined && mowFrom <= on ? on : undefined;
}
