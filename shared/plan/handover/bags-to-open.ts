import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import type { BatchPlan } from '../batch-plan.js';
import { fedOn, type FedPlan } from '../fed-on.js';

/** The days of a hand-over. */
export interface AwayDays {
  readonly from: PlainDate;
  readonly to: PlainDate;
}

/**
 * The days on which a bag of feed is opened while the household is away, some dates more than once.
 * Nobody tells how full the open bag is: it is taken to be full on the first morning, or on that on
 * which its feed begins.
 */
export function bagsOpened(
  plan: FedPlan & Pick<BatchPlan, 'feed'>,
  { from, to }: AwayDays,
): PlainDate[] {
  const { feed, arrivalDate } = plan;
  const opened: PlainDate[] = [];
  let phaseId: string | undefined;
  let leftKg = 0;
  for (let date = from < arrivalDate ? arrivalDate : from; date <= to; date = addDays(date, 1)) {
    const phase = feed.phases.findLast(({ starts }) => String(starts.value) <= date);
    if (phase === undefined) continue;
    if (phase.phaseId !== phaseId) {
      if (phaseId !== undefined) opened.push(date);
      phaseId = phase.phaseId;
      leftKg = phase.bagKg;
    }
    leftKg -= fedOn(plan, date);
    for (; leftKg < -1e-9; leftKg += phase.bagKg) opened.push(date);
  }
  return opened;
}

/** Whether a bag is opened on a day, and when the next is: “no new bag today, the next on Fri 14 May”. */
export function bagWords(
  opened: readonly PlainDate[],
  { from, on, say }: { from: PlainDate; on: PlainDate; say: (date: PlainDate) => string },
): string {
  const next = opened.find((date) => on < date);
  const today = opened.includes(on) ? 'open a new one today' : 'no new one today';
  const later =
    next === undefined ? 'what is open lasts through these days' : `the next on ${say(next)}`;
  return `${today}, ${later} (if a full one stands open on ${say(from)})`;
}
