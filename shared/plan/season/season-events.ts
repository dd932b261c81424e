import type { PlainDate } from '../../calendar/plain-date.js';
import type { BatchPlan } from '../batch-plan.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';

/** A day that other work hangs on: an arrival, a move, a processing day, turn-out, a calving. */
export interface SeasonEvent {
  /** Stays what it is when the event moves to another day. */
  readonly id: string;
  readonly name: string;
  readonly date: PlainDate;
}

/** Events of a batch's life. */
export function eventsOfBatch(id: string, plan: BatchPlan): SeasonEvent[] {
  const event = (what: string, date: unknown, words: string): SeasonEvent[] =>
    date === undefined
      ? []
      : [{ id: `event/${id}/${what}`, date: String(date), name: `${plan.name}: ${words}` }];
  return [
    ...event('arrival', plan.arrivalDate, 'chicks arrive'),
    ...event('move-out', plan.outdoors.moveOut?.value, 'out of the brooder'),
    ...event('leaving', plan.leaving?.on.value, 'processing'),
  ];
}

/** Turn-out, arrivals and calvings of a herd. */
export function eventsOfHerd(herdId: string, { herds, turning }: PasturePlan): SeasonEvent[] {
  const at = herds.findIndex(({ id }) => id === herdId);
  const herd = herds[at];
  const dates = turning.herds[at];
  if (!herd || !dates) return [];
  const event = (what: string, date: unknown, words: string): SeasonEvent => ({
    id: `event/${herdId}/${what}`,
    date: String(date),
    name: `${herd.name}: ${words}`,
  });
  return [
    ...(dates.turnOut ? [event('turn-out', dates.turnOut.value, 'turn-out')] : []),
    ...dates.arrivals.map((arrival, k) => event(`arrival-${k + 1}`, arrival.on, 'cattle arrive')),
    ...dates.calvings.map((calving, k) =>
      event(`calving-${k + 1}`, calving.due.value, 'calving due'),
    ),
  ];
}
