import type { PlainDate } from '../../calendar/plain-date.js';
import type { Quantity } from '../../explain/quantity.js';
import type { PlanIssue } from '../../problems/plan-issue.js';
import type { BatchPlan } from '../batch-plan.js';
import type { BatchStage } from './batch-line.js';

/** Warnings that are settled one way or the other once the birds are there. */
const BEFORE_ARRIVAL = ['too-few-birds', 'no-post', 'eggs-kept-long', 'hatch-away'];
const OF_BROODER =
  /^(brooder-|heat-(?!stress)|lamp-|circuit-|plate-|schedule-of-air|move-|no-warm-nights)/;
/** Work that is late stands among the work of the day. */
const SAID_BY_WORK = 'tasks-late';

/** Whether something of a plan still wants a decision at that stage of its birds. */
export const isOpen = ({ code, level }: PlanIssue, stage: BatchStage): boolean =>
  level !== 'note' &&
  code !== SAID_BY_WORK &&
  (stage === 'coming' || stage === 'eggs' || !BEFORE_ARRIVAL.includes(code)) &&
  (stage !== 'out' || !OF_BROODER.test(code));

/**
 * The day by which a warning of a plan is to be settled; undefined where it is now, or where none
 * is known.
 */
export function settledBy({ code }: PlanIssue, plan: BatchPlan): PlainDate | undefined {
  if (code === 'brooder-floor-short' || code === 'brooder-edge-short') {
    const dates = plan.space.needs.flatMap(({ runsOut }) => dateOf(runsOut) ?? []);
    return dates.sort()[0];
  }
  if (/^(move-|no-warm-nights|cold-later)/.test(code)) return dateOf(plan.outdoors.moveOut);
  if (/^(freezer-full|processing-|cockerels-leave)/.test(code))
    return dateOf(plan.leaving?.on ?? plan.birds.cockerelsLeave?.on);
  if (/^(no-post|heat-|lamp-|circuit-|plate-|too-few-birds)/.test(code)) return plan.arrivalDate;
  return undefined;
}

const dateOf = (quantity: Quantity | undefined): PlainDate | undefined =>
  quantity === undefined ? undefined : String(quantity.value);
