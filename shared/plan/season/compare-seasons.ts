import type { SeasonChange } from './season-changes.js';
import { planSeason, type SeasonPlan } from './season-plan.js';
import type { SeasonRequest } from './season-request.js';

/** Two plans of a season side by side: what a change frees, and what it breaks. */
export interface SeasonComparison {
  /** The plan after the change. */
  readonly plan: SeasonPlan;
  readonly changes: readonly SeasonChange[];
  /** Keys of work that does not fit, before and after. */
  readonly unfitBefore: readonly string[];
  readonly unfitAfter: readonly string[];
  readonly lateBefore: number;
  readonly lateAfter: number;
  /** Weeks with more work due than hours, by their first day. */
  readonly overloadedBefore: readonly string[];
  readonly overloadedAfter: readonly string[];
}

/**
 * Plans a season as it is and as it would be, the second staying with the first wherever it can.
 *
 * @param then the same household after the change
 */
export function compareSeasons(now: SeasonRequest, then: SeasonRequest): SeasonComparison {
  const before = planSeason(now);
  const { keep: _keep, ...after } = planSeason({ ...then, kept: before.keep, before: before.keep });
  return {
    plan: after,
    changes: after.changes!.list,
    unfitBefore: unfit(before),
    unfitAfter: unfit(after),
    lateBefore: late(before),
    lateAfter: late(after),
    overloadedBefore: overloaded(before),
    overloadedAfter: overloaded(after),
  };
}

const unfit = ({ jobs }: SeasonPlan): string[] =>
  jobs.filter(({ pieces }) => pieces.length === 0).map(({ key }) => key);
const late = ({ jobs }: SeasonPlan): number => jobs.filter(({ lateDays }) => 0 < lateDays).length;
const overloaded = ({ weeks }: SeasonPlan): string[] =>
  weeks.filter(({ isOverloaded }) => isOverloaded).map(({ from }) => from);
