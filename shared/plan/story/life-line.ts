import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Batch } from '../../farm/batch.js';
import type { BatchPlan } from '../batch-plan.js';
import { ORDERS } from '../past-tasks.js';
import type { Task } from '../tasks/task.js';
import type { StoryPart } from './story-part.js';

/** One date of a batch's life. */
export interface LifeDate {
  readonly label: string;
  readonly on: PlainDate;
  /** Age of the birds on that day; left out before they hatch. */
  readonly ageDays?: number;
  /** The part of the story that it belongs to. */
  readonly part: StoryPart;
}

/**
 * The dates of a batch's life from the order to the end, the earliest first. What it does not have
 * (a brooder under a hen, a move that no night allows) is left out.
 *
 * @param dayOf where a task stands; left out, where it is counted back to
 */
export function lifeLineOf(
  plan: BatchPlan,
  { orderDate }: Pick<Batch, 'orderDate'>,
  dayOf: (task: Task) => PlainDate = ({ start }) => start,
): readonly LifeDate[] {
  const { hatching, heat, outdoors, feed, leaving, laying, birds } = plan;
  const order = orderOf(plan);
  const dates: readonly (readonly [string, unknown, StoryPart])[] = [
    orderDate === undefined || plan.today < orderDate
      ? ['Order', order ? dayOf(order) : orderDate, 'before']
      : ['Ordered', orderDate, 'before'],
    ['Eggs set', hatching?.setOn.value, 'before'],
    ['Lockdown', hatching?.incubator?.lockdownOn.value, 'before'],
    [hatching ? 'Hatch' : 'Arrive', plan.arrivalDate, 'before'],
    ['Heat off', dayAfter(heat?.lastHeatDay?.value), 'brooder'],
    // Grown birds are in their coop from the day they come.
    ['Out of the brooder', outAfter(plan.arrivalDate, outdoors.moveOut?.value), 'out'],
    ...feed.phases
      .slice(1)
      .map(
        ({ name, starts }) => [`Switch to ${name.toLowerCase()}`, starts.value, 'feed'] as const,
      ),
    ...(leaving?.processingDays ?? []).map(
      ({ on, birds }, _, { length }) =>
        [length === 1 ? 'Processing' : `Processing, ${birds} birds`, on, 'end'] as const,
    ),
    ['Cockerels leave', birds.cockerelsLeave?.on.value, 'end'],
    ['First eggs', laying?.firstEgg.value, 'end'],
    ['First molt', laying?.molts[0]?.value, 'end'],
  ];
  return dates
    .flatMap(([label, on, part]): LifeDate[] => {
      if (typeof on !== 'string') return [];
      const ageDays = daysBetween(plan.hatchDate, on);
      return [{ label, on, part, ...(ageDays < 0 ? {} : { ageDays }) }];
    })
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
}

/** The work of ordering, while it is open. */
export const orderOf = ({ tasks }: BatchPlan): Task | undefined =>
  tasks.tasks.find(({ templateId, isOver }) => ORDERS.has(templateId) && isOver !== true);

const outAfter = (arrivalDate: PlainDate, out: unknown): unknown =>
  out === arrivalDate ? undefined : out;

const dayAfter = (date: unknown): PlainDate | undefined =>
  typeof date === 'string' ? addDays(date, 1) : undefined;
