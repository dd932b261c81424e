import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import { formatDate } from '../../units/dates.js';
import type { KeyDate } from '../tasks/event.js';
import type { Task } from '../tasks/task.js';
import type { WorkNeed } from './work-need.js';
import type { DatedWork, WorkRequest } from './work-request.js';

/** An event that comes before all is ready for it, and the day by which there is time. */
export interface EventToMove {
  readonly id: string;
  readonly kind: 'arrival' | 'turn-out';
  /** Batch or herd. */
  readonly ofId: string;
  readonly name: string;
  readonly from: PlainDate;
  /** Left out where no later day that was tried would do. */
  readonly to?: PlainDate;
  /** What has no place before it, by key and by name. */
  readonly keys: readonly string[];
  readonly names: readonly string[];
  /** What to do, a sentence. */
  readonly said: string;
}

/** Later days that are tried: a box comes in another week, grass waits for some days. */
const LATER_DAYS = { arrival: [2, 7, 14, 28, 42], 'turn-out': [1, 2, 3, 5, 7, 10, 14] } as const;

/** Work of which a plan has no place, or none before what it makes ready for. */
export type Unfit = (request: WorkRequest) => readonly WorkNeed[];

/**
 * Events for which work that makes ready finds no place before them: the first later day with which most
 * of it does together, tried by planning the household again with that event so many days later.
 *
 * @param unfit what finds no place in the plan of a request
 */
export function eventsToMove(request: WorkRequest, unfit: Unfit): EventToMove[] {
  const open = unfit(request).filter(({ prepares }) => prepares !== undefined);
  return request.work.flatMap((work) =>
    eventsOf(work, request.today).flatMap(({ kind, event }): EventToMove[] => {
      // Birds that come later go out later too.
      const waiting = open.filter(
        ({ prepares, belongsTo }) =>
          prepares!.id === event.id ||
          (kind === 'arrival' && prepares!.kind === 'move-out' && belongsTo?.id === work.id),
      );
      if (waiting.length === 0) return [];
      const keys = waiting.map(({ key }) => key);
      const { days, fits } = soonestWithMost(LATER_DAYS[kind], keys, (later) =>
        unfit(withLater(request, work, { kind, days: later })),
      );
      const to = fits.length === 0 ? undefined : addDays(event.date, days);
      const names = waiting.map(({ name }) => name);
      return [
        {
          ...{ id: event.id, kind, ofId: work.id, name: event.name, from: event.date },
          ...(to === undefined ? {} : { to }),
          ...{ keys: to === undefined ? [] : fits, names },
          said: sayMove(request, event, to),
        },
      ];
    }),
  );
}

function sayMove({ farm, today }: WorkRequest, { name }: KeyDate, to: PlainDate | undefined) {
  if (to === undefined)
    return `Move “${name}” until all is ready: no day of the next weeks has the hours for it.`;
  const date = formatDate(to, { units: farm.units, today });
  return `Move “${name}” to ${date} or later: by then there is time for it.`;
}

/** Arrivals and turn-outs that are still to come. Cattle that go out today can go out tomorrow. */
const eventsOf = ({ kind: of, id, events }: DatedWork, today: PlainDate) =>
  of === 'batch'
    ? events.flatMap((event) =>
        event.id === `event/${id}/arrival` && today < event.date
          ? [{ kind: 'arrival' as const, event }]
          : [],
      )
    : events.flatMap((event) =>
        event.id === `event/${id}/turn-out` && today <= event.date
          ? [{ kind: 'turn-out' as const, event }]
          : [],
      );

/** The first of the days on which most fits; where nothing does on the last, no other is tried. */
function soonestWithMost(
  laterDays: readonly number[],
  waiting: readonly string[],
  unfit: (days: number) => readonly WorkNeed[],
): { days: number; fits: readonly string[] } {
  const tryOn = (days: number): { days: number; fits: readonly string[] } => {
    const still = new Set(unfit(days).map(({ key }) => key));
    return { days, fits: waiting.filter((key) => !still.has(key)) };
  };
  const last = tryOn(laterDays.at(-1)!);
  if (last.fits.length === 0) return last;
  for (const days of laterDays.slice(0, -1)) {
    const tried = tryOn(days);
    if (last.fits.length <= tried.fits.length) return tried;
  }
  return last;
}

interface Later {
  readonly kind: EventToMove['kind'];
  readonly days: number;
}

const withLater = (request: WorkRequest, work: DatedWork, later: Later): WorkRequest => ({
  ...request,
  work: request.work.map((each) => (each === work ? laterWork(work, later) : each)),
});

/** All of a batch comes later; of a herd only its turn-out does, its calvings do not. */
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

const laterTask = (task: Task, later: (date: PlainDate) => PlainDate): Task => ({
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
