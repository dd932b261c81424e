import { addDays, daysBetween, type PlainDate } from '../calendar/plain-date.js';

/** A piece of work hung on an anchor date. Knows nothing of farms. */
export interface HungTask {
  readonly id: string;
  readonly anchorDate: PlainDate;
  readonly offsetDays: number;
  /** Last day it may start whatever waits for it, from the anchor. */
  readonly latestOffsetDays?: number;
  readonly lengthDays: number;
  /** Daily work that goes on: it starts on its day, and what waits for it waits for its start. */
  readonly isDaily?: boolean;
  /** Ids of tasks that must be done before this one may start. */
  readonly waitsFor: readonly string[];
}

export interface ScheduledTask {
  readonly id: string;
  /** As hung on the anchor, or earlier where what waits for it would else start late. */
  readonly start: PlainDate;
  /** Days the start was pulled forward from where it hangs. */
  readonly pulledDays: number;
  /** Last day of the work, the start included. */
  readonly end: PlainDate;
  /** Latest start that still lets everything that waits for it start on time. */
  readonly latestStart: PlainDate;
  /** Days between the planned and the latest start; 0 is on the critical path. */
  readonly spareDays: number;
  /** Its latest start lies before today. */
  readonly alreadyLate: boolean;
  /** Planned start lies before today, but there are days to spare. */
  readonly overdue: boolean;
}

/**
 * Dates of tasks hung on anchors, with the latest start of each through the chain of what waits.
 *
 * A task may slip as far as the earliest start of what waits for it, less its own length.
 * One that nothing waits for may slip to its anchor when it lies before it, else not at all.
 * One whose followers leave it too little time is pulled forward, so that no chain is impossible.
 *
 * @throws Error naming the ring when tasks wait for each other in a circle
 */
export function backSchedule(tasks: readonly HungTask[], today: PlainDate): ScheduledTask[] {
  const start = new Map(tasks.map((t) => [t.id, addDays(t.anchorDate, t.offsetDays)]));
  const waiting = new Map<string, HungTask[]>();
  for (const task of tasks) {
    for (const before of task.waitsFor) {
      if (!start.has(before)) continue;
      waiting.set(before, [...(waiting.get(before) ?? []), task]);
    }
  }
  const latest = new Map<string, PlainDate>();
  const onPath: string[] = [];
  const latestStart = (task: HungTask): PlainDate => {
    const known = latest.get(task.id);
    if (known) return known;
    if (onPath.includes(task.id)) throw ring(onPath, task.id);
    onPath.push(task.id);
    const planned = start.get(task.id)!;
    const followers = waiting.get(task.id) ?? [];
    // Tasks of the same day follow each other within it, so they do not push each other back.
    const limits = followers.map((f) => {
      const finish = latestStart(f);
      const sameDay = start.get(f.id) === planned;
      return sameDay || task.isDaily ? finish : addDays(finish, -task.lengthDays);
    });
    const free = task.offsetDays < 0 ? addDays(task.anchorDate, -task.lengthDays) : planned;
    if (limits.length === 0) limits.push(free);
    if (task.isDaily) limits.push(planned);
    if (task.latestOffsetDays !== undefined)
      limits.push(addDays(task.anchorDate, task.latestOffsetDays));
    const limit = earliest(limits);
    onPath.pop();
    latest.set(task.id, limit);
    return limit;
  };
  return tasks.map((task) => {
    const hung = start.get(task.id)!;
    const last = latestStart(task);
    const planned = earliest([hung, last]);
    return {
      id: task.id,
      start: planned,
      pulledDays: daysBetween(planned, hung),
      end: addDays(planned, task.lengthDays - 1),
      latestStart: last,
      spareDays: daysBetween(planned, last),
      alreadyLate: last < today,
      overdue: planned < today && today <= last,
    };
  });
}

const earliest = (dates: readonly PlainDate[]): PlainDate =>
  dates.reduce((a, b) => (a < b ? a : b));

function ring(path: readonly string[], again: string): Error {
  const names = [...path.slice(path.indexOf(again)), again];
  return new Error(
    `These tasks wait for each other in a circle: ${names.join(' → ')}. Remove one.`,
  );
}
