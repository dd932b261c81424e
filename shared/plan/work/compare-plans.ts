import type { CareGap } from './care-gaps.js';
import type { WorkChange } from './work-changes.js';
import { workPlanOf } from './work-plan.js';
import type { PlannedJob, WorkPlan } from './planned-work.js';
import type { WorkRequest } from './work-request.js';

/** Two plans of the work side by side: what a change frees, and what it breaks. */
export interface WorkComparison {
  /** The plan after the change. */
  readonly plan: WorkPlan;
  readonly changes: readonly WorkChange[];
  /** Work that would fit and does not now, and the other way round: what animals need first. */
  readonly nowFits: readonly string[];
  readonly noLongerFits: readonly NoLongerFits[];
  readonly lateBefore: number;
  readonly lateAfter: number;
  /** Weeks with more work due than hours, by their first day. */
  readonly overloadedBefore: readonly string[];
  readonly overloadedAfter: readonly string[];
  /** Days on which animals have nobody, and had somebody before. */
  readonly newGaps: readonly CareGap[];
  /** Work that stays on its day and goes to somebody else. */
  readonly takenOver: readonly TakenOver[];
}

/** Work that has no time after the change. */
export interface NoLongerFits {
  readonly key: string;
  readonly name: string;
  readonly why: string;
  /** Animals suffer without it. */
  readonly animalsNeedIt?: true;
}

/** A piece of work that others do now. */
export interface TakenOver {
  readonly key: string;
  readonly name: string;
  readonly on: string;
  readonly by: readonly string[];
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
    noLongerFits: noLongerFits(before, after),
    lateBefore: late(before),
    lateAfter: late(after),
    overloadedBefore: overloaded(before),
    overloadedAfter: overloaded(after),
    newGaps: after.careGaps.filter((gap) => !before.careGaps.some(({ said }) => said === gap.said)),
    takenOver: takenOver(before, after, then),
  };
}

function noLongerFits(before: WorkPlan, { jobs }: Pick<WorkPlan, 'jobs'>): NoLongerFits[] {
  const lost = jobs
    .filter(isUnfit)
    .filter(({ key }) => !before.jobs.some((job) => job.key === key && isUnfit(job)))
    .map((job): NoLongerFits => ({
      ...{ key: job.key, name: job.name, why: job.whyPart ?? job.why },
      ...(isNeededByAnimals(job) ? { animalsNeedIt: true } : {}),
    }));
  return [
    ...lost.filter(({ animalsNeedIt }) => animalsNeedIt),
    ...lost.filter(({ animalsNeedIt }) => !animalsNeedIt),
  ];
}

/** What keeps them alive, and what is done with them on one day and no other, as their first day's checks. */
const isNeededByAnimals = ({ animalsNeedIt, belongsTo, earliest, latest }: PlannedJob): boolean =>
  animalsNeedIt === true ||
  ((belongsTo?.kind === 'batch' || belongsTo?.kind === 'herd') && earliest === latest);

/** First pieces that stay on their day, done by nobody who was to do them. */
function takenOver(
  before: WorkPlan,
  { jobs }: Pick<WorkPlan, 'jobs'>,
  { people }: WorkRequest,
): TakenOver[] {
  const nameOf = (id: string): string => people.find((person) => person.id === id)?.name ?? id;
  return jobs.flatMap(({ key, name, pieces: [now] }) => {
    const was = before.jobs.find((job) => job.key === key)?.pieces[0];
    if (!was || !now || was.date !== now.date) return [];
    const isSame = was.personIds.every((id) => now.personIds.includes(id));
    const by = now.personIds.filter((id) => !was.personIds.includes(id)).map(nameOf);
    return isSame || by.length === 0 ? [] : [{ key, name, on: now.date, by }];
  });
}

const isUnfit = ({ pieces, shortHours, lostHours }: PlannedJob): boolean =>
  pieces.length === 0 || 0 < shortHours || 0 < lostHours;
const late = ({ jobs }: WorkPlan): number => jobs.filter(({ lateDays }) => 0 < lateDays).length;
const overloaded = ({ weeks }: WorkPlan): string[] =>
  weeks.filter(({ isOverloaded }) => isOverloaded).map(({ from }) => from);
