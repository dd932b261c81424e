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
  const { hatching, outdoors, feed, leaving, laying, birds } = plan;
  const order = orderOf(plan);
  const dates: readonly (readonly [string, unknown, StoryPart])[] = [
    orderDate === undefined || plan.today < orderDate
      ? ['Order', order ? dayOf(order) : orderDate, 'before']
      : ['Ordered', orderDate, 'before'],
    ['Eggs set', hatching?.setOn.value, 'before'],
    ['Lockdown', hatching?.incubator?.lockdownOn.value, 'before'],
    [hatching ? 'Hatch' : 'Arrive', plan.arrivalDate, 'before'],
    ...heatOffOf(plan),
    // Grown birds are in their coop from the day they come.
    ['Out of the brooder', outAfter(plan.arrivalDate, outdoors.moveOut?.value), 'out'],
    ...feed.phases
      .slice(1)
      .map(
        ({ name, starts }) => [`Switch to ${name.toLowerCase()}`, starts.value, 'feed'] as const,
      ),
    ...processingOf(leaving),
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

/** Heat goes by day before it goes for good; off on the day of the move is no date of its own. */
function heatOffOf({
  heat,
  outdoors,
  arrivalDate,
}: BatchPlan): (readonly [string, unknown, StoryPart])[] {
  const last = heat?.lastHeatDay?.value;
  if (last === undefined) return [];
  const off = dayAfter(last);
  const byDay = outdoors.hardenFrom?.value;
  return [
    ...(typeof byDay === 'string' && arrivalDate < byDay && byDay <= String(last)
      ? [['Heat off by day', byDay, 'brooder'] as const]
      : []),
    ...(off === outdoors.moveOut?.value ? [] : [['Heat off', off, 'brooder'] as const]),
  ];
}

/** One date, or of several each with how many birds, those that nobody has hands for included. */
function processingOf(leaving: BatchPlan['leaving']): (readonly [string, unknown, StoryPart])[] {
  const { processingDays: days, birdsWithoutHands: left } = leaving ?? {};
  if (!leaving || !days) return [];
  const isOne = days.length === 1 && left === undefined;
  return [
    ...days.map(
      ({ on, birds }) => [isOne ? 'Processing' : `Processing, ${birds} birds`, on, 'end'] as const,
    ),
    ...(left === undefined
      ? []
      : [[`Processing, ${left} that nobody has hands for`, leaving.on.value, 'end'] as const]),
  ];
}

/** The work of ordering, while it is open. */
export const orderOf = ({ tasks }: BatchPlan): Task | undefined =>
  tasks.tasks.find(({ templateId, isOver }) => ORDERS.has(templateId) && isOver !== true);

const outAfter = (arrivalDate: PlainDate, out: unknown): unknown =>
  out === arrivalDate ? undefined : out;

const dayAfter = (date: unknown): PlainDate | undefined =>
  typeof date === 'string' ? addDays(date, 1) : undefined;
