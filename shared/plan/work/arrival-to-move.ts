import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import { formatDate } from '../../units/dates.js';
import type { Task } from '../tasks/task.js';
import type { WorkNeed } from './work-need.js';
import type { DatedWork, WorkRequest } from './work-request.js';

/** Later arrivals that are tried, in days. */
const LATER_DAYS = [2, 7, 14, 28, 42];

/** Work of which a plan has no place, by its key. */
export type Unfit = (request: WorkRequest) => readonly WorkNeed[];

/**
 * For work that makes ready for a batch and finds no place before it comes: the first later arrival
 * with which most of it does together, tried by planning the household again with that batch so many days later.
 *
 * @param unfit what finds no place in the plan of a request
 * @returns by the key of the work, in words; none where no arrival within six weeks would do
 */
export function arrivalsToMove(request: WorkRequest, unfit: Unfit): ReadonlyMap<string, string> {
  const open = unfit(request).filter(({ prepares }) => prepares !== undefined);
  const found = new Map<string, string>();
  for (const work of request.work) {
    const arrival = work.events.find(({ id }) => id === `event/${work.id}/arrival`);
    if (work.kind !== 'batch' || !arrival || arrival.date <= request.today) continue;
    const waiting = open.filter(({ belongsTo }) => belongsTo?.id === work.id).map(({ key }) => key);
    if (waiting.length === 0) continue;
    const { days, fits } = soonestWithMost(waiting, (later) =>
      unfit(withLater(request, work, later)),
    );
    const date = formatDate(addDays(arrival.date, days), {
      units: request.farm.units,
      today: request.today,
    });
    const words = `Move “${arrival.name}” to ${date} or later: by then there is time for it.`;
    for (const key of fits) found.set(key, words);
  }
  return found;
}

/** The first of the days on which most fits; where nothing does on the last, no other is tried. */
function soonestWithMost(
  waiting: readonly string[],
  unfit: (days: number) => readonly WorkNeed[],
): { days: number; fits: string[] } {
  const tryOn = (days: number): { days: number; fits: string[] } => {
    const still = new Set(unfit(days).map(({ key }) => key));
    return { days, fits: waiting.filter((key) => !still.has(key)) };
  };
  let most = tryOn(LATER_DAYS.at(-1)!);
  if (most.fits.length === 0) return most;
  for (const days of LATER_DAYS.slice(0, -1)) {
    const tried = tryOn(days);
    if (tried.fits.length < most.fits.length) continue;
    most = tried;
    break;
  }
  return most;
}

const withLater = (request: WorkRequest, work: DatedWork, days: number): WorkRequest => ({
  ...request,
  work: request.work.map((each) => (each === work ? laterWork(work, days) : each)),
});

const laterWork = (work: DatedWork, days: number): DatedWork => {
  const later = (date: PlainDate): PlainDate => addDays(date, days);
  return {
    ...work,
    events: work.events.map((event) => ({ ...event, date: later(event.date) })),
    tasks: work.tasks.map((task): Task => ({
      ...task,
      start: later(task.start),
      end: later(task.end),
      latestStart: later(task.latestStart),
      ...(task.earliestStart ? { earliestStart: later(task.earliestStart) } : {}),
      ...(task.noUseAfter ? { noUseAfter: later(task.noUseAfter) } : {}),
      ...(task.spreadOver
        ? { spreadOver: { from: later(task.spreadOver.from), to: later(task.spreadOver.to) } }
        : {}),
    })),
  };
};
