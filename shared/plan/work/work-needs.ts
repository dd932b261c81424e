import { daysBetween } from '../../calendar/plain-date.js';
import type { Sourced } from '../../explain/formula.js';
import type { Priority, WorkConditions, Progress } from '../../farm/job.js';
import { templateOf } from '../tasks/task-hours.js';
import type { Task } from '../tasks/task.js';
import { movedWithEvent } from './hanging-jobs.js';
import { learnedHours, type LearnedHours } from './learned-hours.js';
import type { DatedWork, WorkRequest } from './work-request.js';

/** One piece of work, in days from today. */
export interface WorkNeed {
  readonly key: string;
  readonly name: string;
  /** What it belongs to: a batch, a herd, or nothing but the household. */
  readonly belongsTo?: {
    readonly kind: 'batch' | 'herd';
    readonly id: string;
    readonly name: string;
  };
  /** Kind of work by its template, whichever batch or herd it is for; own work has none. */
  readonly kind?: string;
  /** Work of each person who takes part, as the log of this kind has it. */
  readonly hours: number;
  /** Hours of each that are done, and taken off. */
  readonly hoursDone?: number;
  /** What the table says without the log; left out where nothing was logged. */
  readonly learned?: LearnedHours & { readonly reckonedHours: number };
  readonly fromDay: number;
  readonly dueDay: number;
  readonly untilDay: number;
  readonly conditions: WorkConditions;
  readonly canBeSpread: boolean;
  readonly priority: Priority;
  readonly personIds?: readonly string[];
  readonly waitsFor: readonly { readonly key: string; readonly days: number }[];
  readonly ifLate?: string;
  /** What the hours of its template rest on; own jobs have hours of the household's own. */
  readonly row: Sourced;
}

/** Work that repeats every day between two days and takes its hours first. */
export interface PlannedChore {
  readonly key: string;
  readonly name: string;
  readonly belongsTo: NonNullable<WorkNeed['belongsTo']>;
  readonly hoursPerDay: number;
  readonly fromDay: number;
  readonly toDay: number;
  readonly row: Sourced;
}

const OWN: Sourced = { sources: [], mark: 'own-record' };

/** What is sent on keeps no more of a row than how that is supported. */
export const sourcedOf = ({ sources, mark }: Sourced): Sourced => ({ sources, mark });

/** A piece of work that was ticked off. */
export interface DoneNeed {
  readonly key: string;
  readonly name: string;
  readonly on: string;
  /** Batch or herd it was for. */
  readonly of?: string;
  /** Of each who took part: as it was logged, else as it was reckoned. */
  readonly hours: number;
  readonly peopleNeeded: number;
}

function doneLately(
  { today, tables }: WorkRequest,
  needs: readonly WorkNeed[],
  marks: ReadonlyMap<string, Progress>,
): DoneNeed[] {
  return needs.flatMap(({ key, name, belongsTo, hours, conditions }) => {
    const { doneOn: on, hours: took = hours } = marks.get(key) ?? {};
    return on === undefined || tables.judgements.work.shownDoneDays.value < daysBetween(on, today)
      ? []
      : [
          {
            ...{ key, name, on, hours: took, peopleNeeded: conditions.peopleNeeded ?? 1 },
            ...(belongsTo ? { of: belongsTo.name } : {}),
          },
        ];
  });
}

/** Everything that is still to do, and every chore, within a number of days. */
export function workNeeds(
  request: WorkRequest,
  days: number,
): { needs: WorkNeed[]; chores: PlannedChore[]; done: DoneNeed[] } {
  const marks = new Map(request.progress.map((mark) => [mark.key, mark]));
  const needs: WorkNeed[] = [];
  const chores: PlannedChore[] = [];
  const judged = request.tables.judgements.work;
  const learned = learnedHours(request.progress, judged);
  for (const work of request.work) readWork(request, { work, days, learned }, needs, chores);
  const events = request.work.flatMap((work) => work.events);
  for (const given of request.ownJobs) {
    const job = movedWithEvent(given, events);
    needs.push({
      key: `own/${job.id}`,
      name: job.name,
      row: OWN,
      hours: job.hours,
      fromDay: job.notBefore ? daysBetween(request.today, job.notBefore) : 0,
      dueDay: daysBetween(request.today, job.dueOn),
      untilDay: job.noUseAfter ? daysBetween(request.today, job.noUseAfter) : days - 1,
      conditions: job.conditions,
      canBeSpread: job.canBeSpread,
      priority: job.priority,
      ...(job.personIds === undefined ? {} : { personIds: job.personIds }),
      waitsFor:
        job.waitsForId === undefined
          ? []
          : [{ key: `own/${job.waitsForId}`, days: job.waitDays ?? 0 }],
      ...(job.ifLate === undefined ? {} : { ifLate: job.ifLate }),
    });
  }
  const open = needs.filter(
    (need) => marks.get(need.key)?.doneOn === undefined && need.fromDay < days,
  );
  const keys = new Set(open.map((need) => need.key));
  return {
    chores,
    done: doneLately(request, needs, marks),
    needs: open.map((need) => {
      const { notBefore, hoursDone = 0 } = marks.get(need.key) ?? {};
      const putOff = notBefore ? daysBetween(request.today, notBefore) : 0;
      return {
        ...need,
        hours:
          0 < hoursDone ? Math.max(judged.leastHours.value, need.hours - hoursDone) : need.hours,
        ...(0 < hoursDone ? { hoursDone } : {}),
        fromDay: Math.max(0, need.fromDay, putOff),
        // What is ticked off or long past holds nothing up.
        waitsFor: need.waitsFor.filter(({ key }) => keys.has(key)),
      };
    }),
  };
}

function readWork(
  { today, tables }: WorkRequest,
  { work, days, learned }: { work: DatedWork; days: number; learned: Map<string, LearnedHours> },
  needs: WorkNeed[],
  chores: PlannedChore[],
): void {
  const { graceDays, closeDays, longPastDays } = tables.judgements.work;
  const belongsTo = { kind: work.kind, id: work.id, name: work.name };
  for (const task of work.tasks) {
    if (task.onDemand || task.isOver) continue;
    const key = `${work.kind}/${work.id}/${task.id}`;
    const endDay = daysBetween(today, task.end);
    const everyDay = choreSpan(task);
    if (everyDay) {
      const fromDay = daysBetween(today, everyDay.from);
      const toDay = daysBetween(today, everyDay.to);
      const hoursPerDay = task.hours / (toDay - fromDay + 1);
      if (toDay < 0 || days <= fromDay) continue;
      const span = { fromDay: Math.max(0, fromDay), toDay: Math.min(days - 1, toDay) };
      // What comes with each animal is an average of its days: no day has just that much of it.
      const name = task.spreadOver ? `${task.name} (as they come)` : task.name;
      chores.push({
        key,
        name,
        belongsTo,
        hoursPerDay,
        row: sourcedOf(templateOf(tables, task)),
        ...span,
      });
      continue;
    }
    const fromDay = daysBetween(today, task.earliestStart ?? task.start);
    const dueDay = endDay + task.spareDays + (task.mayFollowDays ?? 0);
    if (dueDay < -longPastDays.value) continue;
    const isOnItsDay = isFixed(work.kind, task);
    const lastUseDay =
      task.noUseAfter === undefined ? Infinity : daysBetween(today, task.noUseAfter);
    const people = task.conditions?.peopleNeeded ?? 1;
    const kind = `${work.kind}/${task.templateId}`;
    const reckonedHours = task.hours / people;
    const known = learned.get(kind);
    needs.push({
      key,
      name: task.name,
      row: sourcedOf(templateOf(tables, task)),
      belongsTo,
      kind,
      hours: reckonedHours * (known?.factor ?? 1),
      ...(known ? { learned: { ...known, reckonedHours } } : {}),
      fromDay,
      dueDay,
      untilDay: isOnItsDay ? Math.max(0, dueDay) : Math.min(dueDay + graceDays.value, lastUseDay),
      conditions: task.conditions ?? {},
      canBeSpread: !isOnItsDay && !task.notSplit,
      priority: isClose(work.kind, task, closeDays.value) ? 'must' : 'should',
      // Work of one day follows each other within it: one that is short of hours holds up no other.
      waitsFor: isOnItsDay
        ? []
        : task.waits.map((wait) => ({
            key: `${work.kind}/${work.id}/${wait.id}`,
            days: wait.days,
          })),
      ifLate: task.ifLate,
    });
  }
}

/** Work on the one day of its event, or on a set day before it; what comes after can wait. */
const isFixed = (kind: DatedWork['kind'], task: Task): boolean =>
  task.spareDays === 0 &&
  task.start === task.end &&
  task.earliestStart === undefined &&
  (kind === 'herd' || task.offsetDays <= 0);

/** Days on which a task takes hours every day; undefined for work that is done once. */
function choreSpan(task: Task): { from: string; to: string } | undefined {
  if (task.spreadOver) return task.spreadOver;
  return task.isDaily ? { from: task.start, to: task.end } : undefined;
}

/** Work with cattle is all called for; of work with birds, what lies close to its event. */
const isClose = (kind: DatedWork['kind'], { offsetDays }: Task, days: number): boolean =>
  kind === 'herd' || Math.abs(offsetDays) <= days;
