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
  /** Keys of what was begun too late, as is said here. */
  readonly shortKeys?: readonly string[];
  /** There is time for all of it, but this was begun later than is recommended. */
  readonly shortRun?: Pick<ShortRun, 'name' | 'days' | 'fullDays' | 'isBegun'>;
}

/** Work of which a plan has no place, or none before what it makes ready for. */
export type Unfit = (request: WorkRequest) => readonly WorkNeed[];

/**
 * Events for which work that makes ready finds no place before them: the first later day with which most
 * of it does together, tried by planning the household again with that event so many days later. What
 * should have gone on for weeks and was begun too late keeps nobody in for weeks: it is said how people go
 * about it, with a day that is a few days later.
 *
 * @param unfit what finds no place in the plan of a request
 * @param put events that are put off already
 * @param begins the day on which work has its place in the plan, by its key
 */
export function eventsToMove(
  request: WorkRequest,
  unfit: Unfit,
  { put = [], begins }: { readonly put?: readonly EventToMove[]; readonly begins: Begins },
): EventToMove[] {
  const open = unfit(request).filter(({ prepares }) => prepares !== undefined);
  return request.work.flatMap((work) =>
    movableEvents(work, request.today).flatMap((movable): EventToMove[] => {
      const { kind, event } = movable;
      if (put.some(({ id }) => id === event.id)) return [];
      const short = shortRuns(request, work, { movable, begins });
      const waiting = open.filter((need) => isBefore(need, work, movable));
      const about = {
        ...{ id: event.id, kind, ofId: work.id, name: event.name, from: event.date },
        ...(short.length === 0 ? {} : { shortKeys: short.map(({ key }) => key) }),
      };
      if (waiting.length === 0)
        return short.length === 0 ? [] : [{ ...about, ...sayShort(request, movable, short) }];
      const tried = laterDays(work, movable);
      const keys = waiting.map(({ key }) => key);
      const found = soonestWithMost(tried, keys, (later) =>
        unfit(withLater(request, work, { kind, days: later })),
      );
      const to = found ? addDays(event.date, found.days) : undefined;
      const last = addDays(event.date, tried.at(-1) ?? 0);
      const fits = found?.fits ?? [];
      const runs = short.map((run) => ({ ...run, days: run.days + (found?.days ?? 0) }));
      return [
        {
          ...about,
          ...(to === undefined ? {} : { to }),
          keys: fits,
          names: [...waiting, ...short].map(({ name }) => name),
          said: [
            sayMove(request, movable, { to, last, fits, waiting }),
            ...runs.filter(isShort).map((run) => runSaid(run, to ?? event.date, request)),
          ].join(' '),
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

/** The day on which work has its place in the plan, by its key. */
type Begins = (key: string) => number | undefined;

/** What was begun, or is planned to begin, too late to have gone on for long enough when its event comes. */
export interface ShortRun {
  readonly key: string;
  readonly name: string;
  /** Days for which it has gone on by then, and should have. */
  readonly days: number;
  readonly fullDays: number;
  /** It goes on by now, as was told. */
  readonly isBegun: boolean;
  /** As many do by the source that asks for the fewest. */
  readonly leastDays: number;
  readonly words: string;
}

export const isShort = ({ days, fullDays }: ShortRun): boolean => days < fullDays;

/** What of the work before an event should go on until it, and for how long it will have. */
export function shortRuns(
  { progress, tables, today }: WorkRequest,
  { kind: of, id, tasks }: DatedWork,
  { movable: { kind, event }, begins }: { readonly movable: Movable; readonly begins: Begins },
): ShortRun[] {
  return tasks
    .flatMap((task): ShortRun[] => {
      const template = templateOf(tables, task);
      if (!template.runsUntilEvent || task.event !== kind) return [];
      const key = `${of}/${id}/${task.id}`;
      const told = progress.find((each) => each.key === key);
      if (told?.struckOut) return [];
      const day = begins(key);
      const from = told?.doneOn ?? (day === undefined ? undefined : addDays(today, day));
      // What has no place is asked for as what finds none.
      if (from === undefined) return [];
      const fullDays = -template.latestOffsetDays!;
      const { leastRunDays: leastDays = fullDays, ifShort } = template;
      const days = Math.max(0, daysBetween(from, event.date));
      const words = [ifShort, `${task.ifLate}.`].filter(Boolean).join(' ');
      const isBegun = told?.doneOn !== undefined;
      return [{ key, name: task.name, isBegun, days, fullDays, leastDays, words }];
    })
    .filter(isShort);
}

/** They go out as planned, or some days later, and with care: never weeks later. */
function sayShort(
  request: WorkRequest,
  { event: { date } }: Movable,
  short: readonly ShortRun[],
): Pick<EventToMove, 'to' | 'keys' | 'names' | 'said' | 'shortRun'> {
  const { turnOutWaitsDays } = request.tables.judgements.work;
  const lateDays = Math.max(...short.map(({ days, leastDays }) => leastDays - days));
  const [first] = short;
  return {
    ...(0 < lateDays ? { to: addDays(date, Math.min(lateDays, turnOutWaitsDays.value)) } : {}),
    ...{ keys: [], names: short.map(({ name }) => name) },
    shortRun: {
      ...{ name: first!.name, days: first!.days, fullDays: first!.fullDays },
      isBegun: short.every(({ isBegun }) => isBegun),
    },
    said: short.map((run) => runSaid(run, date, request)).join(' '),
  };
}

/** For how long it will have gone on, what is recommended, and what people do who are late. */
export const runSaid = (
  { name, days, fullDays, words }: ShortRun,
  on: PlainDate,
  { farm, today }: Pick<WorkRequest, 'farm' | 'today'>,
): string =>
  `“${name}”: ${days} of ${fullDays} days by ${formatDate(on, { units: farm.units, today })}; ${fullDays} days are recommended, so that they are used to it by then. ${words}`;

interface Said {
  readonly to: PlainDate | undefined;
  /** The last day that was tried. */
  readonly last: PlainDate;
  readonly fits: readonly string[];
  readonly waiting: readonly WorkNeed[];
}

function sayMove(
  { farm, today }: WorkRequest,
  { kind, event: { name, date: from } }: Movable,
  { to, last, fits, waiting }: Said,
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
  const why = `there is time for ${still.length === 0 ? 'it' : `${named(ready)}, but not for ${named(still)}`}`;
  const stay = kind === 'move-out' ? ' Until then they need room and heat in the brooder.' : '';
  return `Move “${name}” to ${dateText(to)} or later: by then ${why}.${stay}`;
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
