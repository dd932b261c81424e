import type { PlainDate } from '../../calendar/plain-date.js';
import type { EventKind, WorkUnit } from '../../tables/task-template.js';

/** A day in the life of a batch or herd that tasks hang on. Made once, by the plan of either. */
export interface PlanEvent {
  readonly kind: EventKind;
  /** Which of its kind, from 1, where a batch or herd can have several. */
  readonly number?: number;
  readonly date: PlainDate;
  /** What it is called on the farm, where that is not what is usual. */
  readonly words?: string;
  /** What comes with it, for the names of its tasks. */
  readonly what?: string;
  /** The one animal it is of, where it is not of all: her tasks are named by her. */
  readonly animal?: { readonly id: string; readonly name: string };
  /** Class of the cattle it is of. */
  readonly classId?: string;
  /** Days of its daily work, where those are not the template's. */
  readonly dailyDays?: number;
  /** Only the work of so many days before and after it: the rest is done once for all of its kind. */
  readonly nearDays?: number;
  /** Beside those days also what is done once before, or after, all of its kind. */
  readonly once?: 'before' | 'after';
  /** What its tasks count, where that is not all of the batch or herd. */
  readonly counts?: Readonly<Partial<Record<WorkUnit, number>>>;
}

/** An event by its name among all of a farm, for the household's own work to be tied to. */
export interface KeyDate {
  /** Stays what it is when the event moves to another day. */
  readonly id: string;
  readonly name: string;
  readonly date: PlainDate;
}

/** Events that a household can tie its own work to; the others only hold tasks. */
const NAMES: Partial<Record<EventKind, { readonly id: string; readonly words: string }>> = {
  'eggs-set': { id: 'eggs-set', words: 'eggs set' },
  lockdown: { id: 'lockdown', words: 'lockdown' },
  arrival: { id: 'arrival', words: 'chicks arrive' },
  'move-out': { id: 'move-out', words: 'out of the brooder' },
  processing: { id: 'leaving', words: 'processing' },
  'turn-out': { id: 'turn-out', words: 'turn-out' },
  'cattle-arrival': { id: 'arrival', words: 'cattle arrive' },
  'quarantine-over': { id: 'joining', words: 'new cattle out of quarantine' },
  calving: { id: 'calving', words: 'calving due' },
  mowing: { id: 'mowing', words: 'hay to mow from' },
};

/** The events of one batch or herd by their names on the farm. */
export function keyDatesOf(
  { id, name }: { readonly id: string; readonly name: string },
  events: readonly PlanEvent[],
): KeyDate[] {
  return events.flatMap(({ kind, number, date, animal, words: own, nearDays, once }) => {
    const names = NAMES[kind];
    if (!names || (nearDays !== undefined && once !== 'before')) return [];
    const place = animal ? `-cow-${animal.id}` : number === undefined ? '' : `-${number}`;
    const words = animal ? `${animal.name}, ${names.words}` : (own ?? names.words);
    return [{ id: `event/${id}/${names.id}${place}`, name: `${name}: ${words}`, date }];
  });
}

/** The event of a kind on a date among those of one batch or herd, by its name on the farm. */
export const keyDateOn = (
  events: readonly KeyDate[],
  of: string,
  { kind, date }: { readonly kind: EventKind; readonly date: PlainDate },
): KeyDate | undefined =>
  events.find(
    (event) => event.date === date && event.id.startsWith(`event/${of}/${NAMES[kind]?.id ?? kind}`),
  );
