import type { PlainDate } from '../../calendar/plain-date.js';
import type { NumberQuantity } from '../../explain/quantity.js';
import type { PlanIssue } from '../../problems/plan-issue.js';
import type { BatchPlan } from '../batch-plan.js';
import { batchRow } from './batch-row.js';

/** What another arrival date would do to a batch, as far as its own plan says. */
export interface ArrivalEffects {
  /** Dates that move, in their order. */
  readonly moved: readonly {
    readonly words: string;
    readonly from?: PlainDate;
    readonly to?: PlainDate;
  }[];
  /** What would be wrong then and is not now, the most pressing first; and the other way round. */
  readonly worse: readonly PlanIssue[];
  readonly better: readonly PlanIssue[];
  /** Places and freezers that are taken now and then alike. */
  readonly still: readonly PlanIssue[];
  /** How many of the first nights outdoors are too cold for them. */
  readonly coldNights?: { readonly from?: NumberQuantity; readonly to?: NumberQuantity };
}

/**
 * Sets two plans of one batch side by side.
 *
 * @param now its plan as it is
 * @param then the same batch arriving on another day
 */
export function arrivalEffects(now: BatchPlan, then: BatchPlan): ArrivalEffects {
  const [from, to] = [now.outdoors.coldNights, then.outdoors.coldNights];
  const isAsCold = from?.value === to?.value;
  return {
    moved: movedDates(now, then),
    worse: notIn(then.issues, now.issues),
    better: notIn(now.issues, then.issues),
    still: then.issues.filter(
      ({ code }) => OF_OTHERS.includes(code) && now.issues.some((issue) => issue.code === code),
    ),
    ...(isAsCold ? {} : { coldNights: { ...(from ? { from } : {}), ...(to ? { to } : {}) } }),
  };
}

/** What batches take from each other. */
const OF_OTHERS = ['place-taken', 'freezer-full'];

/** Dates of one name in their order: the first of one plan is the first of the other. */
function movedDates(now: BatchPlan, then: BatchPlan): ArrivalEffects['moved'] {
  const before = numbered(now);
  const after = numbered(then);
  return [...new Set([...before.keys(), ...after.keys()])]
    .map((key) => {
      const [from, to] = [before.get(key), after.get(key)];
      return {
        words: (to ?? from)!.words,
        ...(from ? { from: from.on } : {}),
        ...(to ? { to: to.on } : {}),
      };
    })
    .filter(({ from, to }) => from !== to);
}

function numbered(plan: BatchPlan): Map<string, { words: string; on: PlainDate }> {
  const seen = new Map<string, number>();
  return new Map(
    batchRow('', plan).dates.map((date) => {
      const number = (seen.get(date.words) ?? 0) + 1;
      seen.set(date.words, number);
      return [`${date.words} ${number}`, date];
    }),
  );
}

/** Issues that are not merely said with another date or number. */
const notIn = (issues: readonly PlanIssue[], others: readonly PlanIssue[]): PlanIssue[] =>
  issues.filter(
    ({ level, code }) =>
      level !== 'note' && !others.some((other) => other.code === code && other.level !== 'note'),
  );
