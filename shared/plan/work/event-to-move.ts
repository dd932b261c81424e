import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import { formatDate } from '../../units/dates.js';
import { listed } from '../../units/listed.js';
import { templateOf } from '../tasks/task-hours.js';
import {
  laterDays,
  movableEvents,
  withLater,
  type Movable,
  type MovableKind,
} from './later-event.js';
import type { WorkNeed } from './work-need.js';
import type { DatedWork, WorkRequest } from './work-request.js';

/** An event that comes before all is ready for it, and the day by which there is time. */
export interface EventToMove {
  readonly id: string;
  readonly kind: MovableKind;
  /** Batch or herd. */
  readonly ofId: string;
  readonly name: string;
  readonly from: PlainDate;
  /** Left out where no later day that was tried would do. */
  readonly to?: PlainDate;
  /** Keys of what is ready by that day. */
  readonly keys: readonly string[];
  /** Names of all that is not ready before it. */
  readonly names: readonly string[];
  /** What to do, a sentence. */
  readonly said: string;
  /** The plan has it on that day already: a turn-out follows what makes ready for it. */
  readonly isPutOff?: true;
}

/** Work of which a plan has no place, or none before what it makes ready for. */
export type Unfit = (request: WorkRequest) => readonly WorkNeed[];

/**
 * Events for which work that makes ready finds no place before them: the first later day with which most
 * of it does together, tried by planning the household again with that event so many days later. What
 * must have gone on for some weeks has done so by then, also where it was begun already.
 *
 * @param unfit what finds no place in the plan of a request
 * @param put events that are put off already
 */
export function eventsToMove(
  request: WorkRequest,
  unfit: Unfit,
  put: readonly EventToMove[] = [],
): EventToMove[] {
  const open = unfit(request).filter(({ prepares }) => prepares !== undefined);
  return request.work.flatMap((work) =>
    movableEvents(work, request.today).flatMap((movable): EventToMove[] => {
      const { kind, event } = movable;
      if (put.some(({ id }) => id === event.id)) return [];
      const begun = begunLate(request, work, movable);
      const waiting = open.filter((need) => isBefore(need, work, movable));
      if (waiting.length === 0 && begun.length === 0) return [];
      // By so many days at least, for what must go on until then.
      const behind = Math.max(
        0,
        ...begun.map(({ lateDays }) => lateDays),
        ...waiting.map(({ mustRun }) => -(mustRun?.fromDay ?? 0)),
      );
      const tried = laterDays(work, movable, behind);
      const keys = waiting.map(({ key }) => key);
      const found = soonestWithMost(tried, keys, (later) =>
        unfit(withLater(request, work, { kind, days: later })),
      );
      const to = found ? addDays(event.date, found.days) : undefined;
      const last = addDays(event.date, tried.at(-1) ?? 0);
      return [
        {
          ...{ id: event.id, kind, ofId: work.id, name: event.name, from: event.date },
          ...(to === undefined ? {} : { to }),
          keys: found?.fits ?? [],
          names: [...waiting, ...begun].map(({ name }) => name),
          said: sayMove(request, movable, { to, last, fits: found?.fits ?? [], waiting, begun }),
        },
      ];
    }),
  );
}

/** Birds that come later go out later too. */
const isBefore = (
  { prepares, belongsTo }: WorkNeed,
  { id }: DatedWork,
  { kind, event }: Movable,
): boolean =>
  prepares!.id === event.id ||
  (kind === 'arrival' && prepares!.kind === 'move-out' && belongsTo?.id === id);

/** What was begun, and too late to have gone on for long enough when its event comes. */
interface BegunLate {
  readonly name: string;
  readonly ifLate: string;
  readonly mustRun: { readonly days: number };
  readonly lateDays: number;
}

function begunLate(
  { progress, tables }: WorkRequest,
  { kind: of, id, tasks }: DatedWork,
  { kind, event }: Movable,
): BegunLate[] {
  return tasks.flatMap((task): BegunLate[] => {
    const { runsUntilEvent, latestOffsetDays } = templateOf(tables, task);
    if (!runsUntilEvent || task.event !== kind) return [];
    const doneOn = progress.find(({ key }) => key === `${of}/${id}/${task.id}`)?.doneOn;
    const lateDays =
      doneOn === undefined ? 0 : daysBetween(addDays(event.date, latestOffsetDays!), doneOn);
    return 0 < lateDays
      ? [{ name: task.name, ifLate: task.ifLate, mustRun: { days: -latestOffsetDays! }, lateDays }]
      : [];
  });
}

interface Said {
  readonly to: PlainDate | undefined;
  /** The last day that was tried. */
  readonly last: PlainDate;
  readonly fits: readonly string[];
  readonly waiting: readonly WorkNeed[];
  readonly begun: readonly BegunLate[];
}

function sayMove(
  { farm, today }: WorkRequest,
  { kind, event: { name, date: from } }: Movable,
  { to, last, fits, waiting, begun }: Said,
): string {
  const dateText = (date: PlainDate): string => formatDate(date, { units: farm.units, today });
  const named = (needs: readonly { readonly name: string }[]): string =>
    listed(needs.map((each) => `“${each.name}”`));
  if (to === undefined)
    return from < last
      ? `Move “${name}” until all is ready: none of the days tried, up to ${dateText(last)}, has the hours for it.`
      : `Find the hours for it: “${name}” cannot wait.`;
  const ready = waiting.filter(({ key }) => fits.includes(key));
  const still = waiting.filter(({ key }) => !fits.includes(key));
  const running = [...ready.filter(({ mustRun }) => mustRun), ...begun];
  const why = [
    // Of what only began too late the hours were there.
    ...(running.length < ready.length + begun.length || 0 < still.length
      ? [
          `there is time for ${still.length === 0 ? 'it' : `${named(ready)}, but not for ${named(still)}`}`,
        ]
      : []),
    ...running.map((each) => `${named([each])} has gone on for ${each.mustRun!.days} days`),
  ];
  const care = [...new Set(running.map(({ ifLate }) => ifLate))].map((words) => ` ${words}.`);
  const stay = kind === 'move-out' ? ' Until then they need room and heat in the brooder.' : '';
  return `Move “${name}” to ${dateText(to)} or later: by then ${listed(why)}.${stay}${care.join('')}`;
}

/**
 * The first of the days on which most fits; where nothing does on the last, no other is tried, and
 * there is none.
 */
function soonestWithMost(
  days: readonly number[],
  waiting: readonly string[],
  unfit: (days: number) => readonly WorkNeed[],
): { days: number; fits: readonly string[] } | undefined {
  const [soonest] = days;
  if (soonest === undefined) return undefined;
  if (waiting.length === 0) return { days: soonest, fits: [] };
  const fitsOn = (each: number): readonly string[] => {
    const still = new Set(unfit(each).map(({ key }) => key));
    return waiting.filter((key) => !still.has(key));
  };
  const last = { days: days.at(-1)!, fits: fitsOn(days.at(-1)!) };
  if (last.fits.length === 0) return undefined;
  for (const each of days.slice(0, -1)) {
    const fits = fitsOn(each);
    if (last.fits.length <= fits.length) return { days: each, fits };
  }
  return last;
}
