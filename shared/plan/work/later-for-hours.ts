import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import { formatDate } from '../../units/dates.js';
import { listed } from '../../units/listed.js';
import { laterDays, withLater, type LaterMove } from './later-event.js';
import type { WorkHours } from './work-hours.js';
import type { DatedWork, WorkRequest } from './work-request.js';
import { isWorthTelling } from './worth-telling.js';

/** A move out or a turn-out on a day that lacks hours for it, and the first later day that has them. */
export interface LaterForHours extends LaterMove {
  /** Keys of the work for which that day has the hours. */
  readonly keys: readonly string[];
  /** What to do, a sentence. */
  readonly said: string;
}

/**
 * Moves out and turn-outs for whose own work nobody is there on its day, or only beyond people's hours,
 * with the first later day of those tried that has hours for all of it; where none has, a brooder holds
 * the birds no longer, or the day is months off, there is nothing to say.
 *
 * @param isShort by key of work, in the plan as it is: without a place, or beyond hours
 * @param hoursOf the hours of so many days
 */
export function laterForHours(
  request: WorkRequest,
  isShort: (key: string) => boolean,
  hoursOf: (request: WorkRequest, days: number) => WorkHours,
): LaterForHours[] {
  const { today } = request;
  return request.work.flatMap((work) =>
    KINDS.flatMap((kind): LaterForHours[] => {
      const event = work.events.find(({ id }) => id === `event/${work.id}/${kind}`);
      if (!event || event.date < today || addDays(today, AHEAD_DAYS) < event.date) return [];
      const ownTasks = work.tasks.filter((task) => task.event === kind);
      const keyOf = (id: string): string => `${work.kind}/${work.id}/${id}`;
      const ownKeys = new Set(ownTasks.map(({ id }) => keyOf(id)));
      const short = ownTasks.filter(({ id }) => isShort(keyOf(id)));
      if (short.length === 0) return [];
      const others = request.work.filter((other) => other !== work);
      const days = laterDays(work, { kind, event }).find((each) => {
        // Processing is laid out anew around what else there is: nobody knows how before it is.
        if (isProcessedOn(others, addDays(event.date, each))) return false;
        const horizon = daysBetween(today, event.date) + each + DAYS_BESIDE;
        const asked = withLater(request, work, { kind, days: each });
        const { onItsDay } = hoursOf(
          kind === 'turn-out'
            ? withMovesLater(asked, work.id, { days: each, outOn: addDays(event.date, each) })
            : asked,
          horizon,
        );
        const left = [...ownKeys].map(
          (key) => onItsDay.get(key)?.shortMinutes ?? (isShort(key) ? Infinity : 0),
        );
        return !left.some((minutes) => isWorthTelling(minutes / 60));
      });
      if (days === undefined) return [];
      const to = addDays(event.date, days);
      const date = formatDate(to, { units: request.farm.units, today });
      const names = listed(short.map(({ name }) => `“${name}”`));
      const stay = kind === 'move-out' ? ' Until then they need room and heat in the brooder.' : '';
      const said = `Move “${event.name}” to ${date}: that day has the hours for ${names}.${stay}`;
      return [{ kind, ofId: work.id, to, keys: short.map(({ id }) => keyOf(id)), said }];
    }),
  );
}

/** The moves on grass of a herd that turns out later, and its hay until then: they take hours too. */
const withMovesLater = (
  request: WorkRequest,
  id: string,
  { days, outOn }: { readonly days: number; readonly outOn: PlainDate },
): WorkRequest => ({
  ...request,
  work: request.work.map((each) => {
    if (each.id !== id || !each.round) return each;
    const outLaterDays = (each.round.outLaterDays ?? 0) + days;
    return { ...each, round: { ...each.round, outLaterDays, outOn } };
  }),
});

const isProcessedOn = (works: readonly DatedWork[], date: PlainDate): boolean =>
  works.some(({ tasks }) =>
    tasks.some(({ event, start, end }) => event === 'processing' && start <= date && date <= end),
  );

/** Nobody settles now on which day of the next half-year cattle go out. */
const AHEAD_DAYS = 100;

const KINDS = ['move-out', 'turn-out'] as const;

/** Work of a move may lie some days after it. */
const DAYS_BESIDE = 8;
