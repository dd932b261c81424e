import type { PlainDate } from '../../calendar/plain-date.js';
import { formatDate } from '../../units/dates.js';
import { noPostOn } from '../no-post.js';
import { takenOrders } from '../taken-orders.js';
import { longLeads, type LongLead } from '../story/long-leads.js';
import type { PlannedBatch } from '../work/dated-work.js';
import type { Attention, Looked } from './looked-at.js';

/** An order or a booking whose day is past, by the key of its work. */
export interface LateOrder extends LongLead {
  readonly key: string;
  readonly batchId: string;
  readonly batchName: string;
}

/** What was to be ordered or booked before today: it is for today, whatever day has hours for it. */
export const lateOrders = (batches: readonly PlannedBatch[], today: PlainDate): LateOrder[] =>
  batches.flatMap(({ id, name, plan }) =>
    longLeads(plan)
      .filter(({ task }) => task.start < today)
      .map((lead) => ({
        ...lead,
        ...{ key: `batch/${id}/${lead.task.id}`, batchId: id, batchName: name },
      })),
  );

/** Keys of those that can be seen to today: on a day without post nobody answers a call either. */
export const orderedToday = (
  batches: readonly PlannedBatch[],
  day: Parameters<typeof noPostOn>[1] & { readonly today: PlainDate },
): ReadonlySet<string> =>
  noPostOn(day.today, day) === undefined
    ? new Set(lateOrders(batches, day.today).map(({ key }) => key))
    : new Set();

/**
 * Birds to come that are taken as ordered because it is too late for another order, though nobody told
 * it: the first thing to know, until somebody does.
 */
export const untoldOrders = ({
  batches,
  picture: { batches: rows, farm, progress, headChanges, today },
}: Looked): Attention[] =>
  takenOrders(batches).flatMap(({ batchId: id, key, latest }) => {
    const { name, plan } = batches.find((each) => each.id === id)!;
    if (!rows.some((each) => each.id === id)) return [];
    const isTold =
      headChanges.some(({ batchId }) => batchId === id) ||
      progress.some((each) => each.key === key && (each.doneOn !== undefined || each.struckOut));
    if (isTold) return [];
    const say = (date: PlainDate): string => formatDate(date, { units: farm.units, today });
    const { words, birds, arrivalDate } = plan;
    return [
      {
        key: `ordered/${id}`,
        level: 'stop',
        words: `are the ${birds.chicksPlaced.value} ${words.young} of ${say(arrivalDate)} ordered?`,
        text: `Nobody told that they are, and the last day for it was ${say(latest)}. If they are not, ask today what is left for that week, or have them come later: “Arrival” of the batch.`,
        of: name,
        ordered: key,
        place: { kind: 'batch', id },
      },
    ];
  });

/** Each of them that is open in the plan of the work, with its day and the last one. */
export function askedOrders({ batches, plan, picture: { farm, today } }: Looked): Attention[] {
  const open = new Set(plan.jobs.map(({ key }) => key));
  const say = (date: PlainDate): string => formatDate(date, { units: farm.units, today });
  return lateOrders(batches, today)
    .filter(({ key }) => open.has(key))
    .map(({ key, batchId, batchName, words, task }) => {
      const { start, latestStart, leadNote, ifLate } = task;
      const why = leadNote === undefined ? '' : ` (${leadNote})`;
      const last =
        latestStart < today
          ? `The last day for it was ${say(latestStart)}${why}: ask today what is left before anything else.`
          : `The last day for it is ${say(latestStart)}${why}, and until then what can be had gets less.`;
      return {
        key: `order/${key}`,
        level: 'act',
        words: `${words} today: the day for it was ${say(start)}`,
        text: `${last} If it is left: ${ifLate.charAt(0).toLowerCase()}${ifLate.slice(1)}.`,
        of: batchName,
        place: { kind: 'batch', id: batchId },
        ...(latestStart <= today ? {} : { by: latestStart }),
      };
    });
}
