import type { WorkChange } from './work-changes.js';
import { workPlanOf } from './work-plan.js';
import type { PlannedJob, WorkPlan } from './planned-work.js';
import type { WorkRequest } from './work-request.js';

/** Two plans of the work side by side: what a change frees, and what it breaks. */
export interface WorkComparison {
  /** The plan after the change. */
  readonly plan: WorkPlan;
  readonly changes: readonly WorkChange[];
  /** Work that would fit and does not now, and the other way round. */
  readonly nowFits: readonly string[];
  readonly noLongerFits: readonly { readonly name: string; readonly why: string }[];
  readonly lateBefore: number;
  readonly lateAfter: number;
  /** Weeks with more work due than hours, by their first day. */
  readonly overloadedBefore: readonly string[];
  readonly overloadedAfter: readonly string[];
}

/**
 * Plans the work as it is and as it would be, the second staying with the first wherever it can.
 *
 * @param then the same household after the change
 */
export function compareWorkPlans(now: WorkRequest, then: WorkRequest): WorkComparison {
  const before = workPlanOf(now);
  const { keep: _keep, ...after } = workPlanOf({ ...then, kept: before.keep, before: before.keep });
  return {
    plan: after,
    changes: after.changes!.list,
    nowFits: before.jobs
      .filter(isUnfit)
      .filter(({ key }) => after.jobs.some((job) => job.key === key && !isUnfit(job)))
      .map(({ name }) => name),
    noLongerFits: after.jobs
      .filter(isUnfit)
      .filter(({ key }) => !before.jobs.some((job) => job.key === key && isUnfit(job)))
      .map(({ name, why, whyPart }) => ({ name, why: whyPart ?? why })),
    lateBefore: late(before),
    lateAfter: late(after),
    overloadedBefore: overloaded(before),
    overloadedAfter: overloaded(after),
  };
}

const isUnfit = ({ pieces, shortHours, lostHours }: PlannedJob): boolean =>
  pieces.length === 0 || 0 < shortHours || 0 < lostHours;
const late = ({ jobs }: WorkPlan): number => jobs.filter(({ lateDays }) => 0 < lateDays).length;
const overloaded = ({ weeks }: WorkPlan): string[] =>
  weeks.filter(({ isOverloaded }) => isOverloaded).map(({ from }) => from);
