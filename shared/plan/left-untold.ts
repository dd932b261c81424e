import { addDays, type PlainDate } from '../calendar/plain-date.js';
import type { HeadChange } from '../farm/head-count.js';
import type { Progress } from '../farm/job.js';
import type { Tables } from '../tables/tables.js';
import type { BatchPlan } from './batch-plan.js';
import type { DatedPlan } from './day-in-plan.js';

/** Work after which nothing of a batch is left to feed. */
const CAUGHT = 'processor.catch-after-dark-or-at-dawn';
const TAKES_THEM: ReadonlySet<string> = new Set(['processing.kill-scald-pluck-eviscerate', CAUGHT]);

interface Asked {
  readonly today: PlainDate;
  readonly progress: readonly Progress[];
  readonly tables: Tables;
}

/**
 * The day on which meat birds were to leave, where it is past and nobody told or ticked off that they
 * did: they may still be there, and want feed and water. Undefined once it is told; birds that nobody
 * ever counted are taken to have left as planned so long after that day.
 */
export function leftUntold(
  { id, plan }: { readonly id: string; readonly plan: BatchPlan },
  { today, progress, tables }: Asked,
): PlainDate | undefined {
  if (plan.purpose !== 'meat' || !plan.leaving) return undefined;
  if (plan.birds.counted?.lastLeftOn !== undefined) return undefined;
  const on = String(plan.leaving.on.value);
  const { leavingAskedDays } = tables.judgements.alarms;
  const isLongAgo = addDays(on, leavingAskedDays.value) < today;
  if (today <= on || (isLongAgo && !plan.birds.counted)) return undefined;
  return takenOn({ id, plan }, progress).length === 0 ? on : undefined;
}

/** The days on which the work was ticked off that takes birds away, in order; none while some of it is open. */
function takenOn(
  { id, plan }: { readonly id: string; readonly plan: BatchPlan },
  progress: readonly Progress[],
): PlainDate[] {
  const done = new Map(progress.map(({ key, doneOn }) => [key, doneOn]));
  const taken = plan.tasks.tasks
    .filter(({ templateId }) => TAKES_THEM.has(templateId))
    .map((task) => done.get(`batch/${id}/${task.id}`));
  // Of birds that go on several days some are there until the last of these is ticked off.
  const days = taken.filter((day) => day !== undefined);
  return days.length < taken.length ? [] : days.sort();
}

type HeadChanges = readonly (HeadChange & { readonly batchId: string })[];

/** Whether some of a batch were told to be processed, sold or given, on a day or after it. */
const someToldGone = (changes: HeadChanges, batchId: string, from: PlainDate = ''): boolean =>
  changes.some(
    (each) =>
      each.batchId === batchId &&
      each.change !== 'arrived' &&
      each.change !== 'died' &&
      from <= each.date,
  );

/**
 * The day on which the processing of meat birds was ticked off of whom nobody told how many they were, for
 * so long as it is asked whether birds have left. What is not counted is in no record. Birds for a
 * processor are caught the evening before their day.
 */
export function takenUncounted(
  { id, plan }: { readonly id: string; readonly plan: BatchPlan },
  { today, progress, tables, headChanges }: Asked & { readonly headChanges: HeadChanges },
): PlainDate | undefined {
  if (plan.purpose !== 'meat' || !plan.leaving) return undefined;
  const days = takenOn({ id, plan }, progress);
  const caughtOn = days.at(-1);
  if (caughtOn === undefined || someToldGone(headChanges, id, days[0])) return undefined;
  const isSent = plan.tasks.tasks.some(({ templateId }) => templateId === CAUGHT);
  const last = String(plan.leaving.on.value);
  const on = isSent && caughtOn < last ? last : caughtOn;
  const { leavingAskedDays } = tables.judgements.alarms;
  return today < on || addDays(on, leavingAskedDays.value) < today ? undefined : on;
}

/**
 * The same batches, with the days on which they are to be looked after though their plan is over, because
 * nobody told that they left: the one answer of the round, the sheets, the feed and the page of the day.
 */
export const withStillHere = <Planned extends { readonly id: string; readonly plan: BatchPlan }>(
  batches: readonly Planned[],
  asked: Asked & Parameters<typeof processedUntold>[1],
): (Planned & { readonly plan: BatchPlan & DatedPlan })[] =>
  batches.map((batch) => {
    const { plan } = batch;
    const left = leftUntold(batch, asked);
    const since = processedUntold(batch, asked)[0]?.on ?? left;
    if (since === undefined || !plan.leaving || (!left && isOverUntold(plan, asked))) return batch;
    const last = String(plan.leaving.on.value);
    const { value: days } = asked.tables.judgements.alarms.leavingAskedDays;
    // Birds that were counted are there until it is told.
    const until = left ? addDays(plan.birds.counted ? asked.today : left, days) : last;
    return { ...batch, plan: { ...plan, stillHere: { since, until } } };
  });

/** Whether their last day is past, and they are taken to have left, or told or ticked off to have. */
const isOverUntold = ({ leaving }: BatchPlan, { today }: { readonly today: PlainDate }): boolean =>
  leaving !== undefined && String(leaving.on.value) < today;

/** A day on which some of a batch were to be processed. */
export interface ProcessingUntold {
  readonly on: PlainDate;
  readonly birds: number;
}

/**
 * The days before the last one on which some were to be processed, where they are past and nobody told or
 * ticked off that any were: until then these birds may all be there.
 */
export function processedUntold(
  { id, plan }: { readonly id: string; readonly plan: BatchPlan },
  {
    today,
    progress,
    headChanges,
  }: {
    readonly today: PlainDate;
    readonly progress: readonly Progress[];
    readonly headChanges: HeadChanges;
  },
): ProcessingUntold[] {
  const early = plan.leaving?.processingDays.slice(0, -1) ?? [];
  // Once some are told to be gone the days of the others are planned anew from there.
  if (plan.purpose !== 'meat' || someToldGone(headChanges, id)) return [];
  const done = new Set(progress.flatMap(({ key, doneOn }) => (doneOn === undefined ? [] : [key])));
  const isTicked = (on: PlainDate): boolean =>
    plan.tasks.tasks.some(
      ({ templateId, start, id: taskId }) =>
        TAKES_THEM.has(templateId) && start === on && done.has(`batch/${id}/${taskId}`),
    );
  return early
    .filter(({ on }) => on < today && !isTicked(on))
    .map(({ on, birds }) => ({ on, birds }));
}
