import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { KeyDate } from '../tasks/event.js';
import type { Task } from '../tasks/task.js';
import type { DatedWork, WorkRequest } from './work-request.js';

/** Events that a household may put off. */
export type MovableKind = 'arrival' | 'move-out' | 'turn-out';

/** A later day of a move out or a turn-out. */
export interface LaterMove {
  readonly kind: 'move-out' | 'turn-out';
  /** Batch or herd. */
  readonly ofId: string;
  readonly to: PlainDate;
}

/**
 * Later days that are tried: a box comes in another week, grass and a brooder wait for some days. How
 * fine the search is, nothing of farming: more of them take longer, and each is costed all the same.
 */
const LATER_DAYS = {
  arrival: [2, 7, 14, 28, 42],
  'move-out': [1, 2, 3, 5, 7, 10, 14],
  'turn-out': [1, 2, 3, 5, 7, 10, 14],
} as const;

export interface Movable {
  readonly kind: MovableKind;
  readonly event: KeyDate;
}

/**
 * What is still to come: an arrival, and a move out once they are there; a turn-out, of cattle that go
 * out today too: they can go out tomorrow, unless they were told to be out.
 */
export function movableEvents(
  { kind: of, id, events, round }: DatedWork,
  today: PlainDate,
): Movable[] {
  const on = (kind: MovableKind): Movable[] =>
    events.flatMap((event) => (event.id === `event/${id}/${kind}` ? [{ kind, event }] : []));
  if (of === 'herd')
    return round?.herd.inPaddockId === undefined
      ? on('turn-out').filter(({ event }) => today <= event.date)
      : [];
  const [first] = [...on('arrival'), ...on('move-out')].filter(({ event }) => today < event.date);
  return first ? [first] : [];
}

/**
 * Days that are tried, so many later at least. Birds stay in a brooder as long as it is known to hold
 * them, and not until they leave.
 */
export function laterDays(
  { id, birds, events }: DatedWork,
  { kind, event }: Movable,
  behind = 0,
): readonly number[] {
  const all = [...(0 < behind ? [behind] : []), ...LATER_DAYS[kind].map((days) => behind + days)];
  if (kind !== 'move-out') return all;
  const leaving = events.find((each) => each.id === `event/${id}/leaving`);
  const most = Math.min(
    birds?.space.spare?.value ?? Infinity,
    leaving ? daysBetween(event.date, leaving.date) - 1 : Infinity,
  );
  return all.filter((days) => days <= most);
}

interface Later {
  readonly kind: MovableKind;
  readonly days: number;
}

/** All with that event, and the work before and after it, so many days later. */
export const withLater = (request: WorkRequest, work: DatedWork, later: Later): WorkRequest => ({
  ...request,
  work: request.work.map((each) => (each === work ? laterWork(work, later) : each)),
});

/** All of a batch comes later; a move or a turn-out does alone: calvings do not. */
function laterWork(work: DatedWork, { kind, days }: Later): DatedWork {
  const later = (date: PlainDate): PlainDate => addDays(date, days);
  const isAll = kind === 'arrival';
  return {
    ...work,
    events: work.events.map((event) =>
      isAll || event.id === `event/${work.id}/${kind}`
        ? { ...event, date: later(event.date) }
        : event,
    ),
    tasks: work.tasks.map((task): Task =>
      isAll || task.event === kind ? laterTask(task, later) : task,
    ),
  };
}

/** A task with all its days later. */
export const laterTask = (task: Task, later: (date: PlainDate) => PlainDate): Task => ({
  ...task,
  start: later(task.start),
  end: later(task.end),
  latestStart: later(task.latestStart),
  ...(task.earliestStart ? { earliestStart: later(task.earliestStart) } : {}),
  ...(task.noUseAfter ? { noUseAfter: later(task.noUseAfter) } : {}),
  ...(task.spreadOver
    ? { spreadOver: { from: later(task.spreadOver.from), to: later(task.spreadOver.to) } }
    : {}),
});
