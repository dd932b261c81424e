import { addDays, daysBetween, type PlainDate } from '../calendar/plain-date.js';
import { input, quantity, round6, type NumberQuantity } from '../explain/quantity.js';
import { facilityOf } from '../farm/facility.js';
import type { TaskTemplate } from '../tables/task-template.js';
import { saidOf } from './bird-words.js';
import {
  eventsOf,
  GETS_BROODER,
  heatToBuildWith,
  holds,
  missingHeat,
  NOT_OF_THE_DAY,
} from './batch-events.js';
import type { PlanContext } from './context.js';
import { planContext } from './plan-context.js';
import { nameOfPhase } from './phase-feed.js';
import type { FeedPart } from './feed.js';
import { saidOfHeat } from './heat-words.js';
import { found, type Found } from './found.js';
import type { HeatPart } from './heat.js';
import { birdsToProcess } from './leaving-weights.js';
import { noPostOn } from './no-post.js';
import {
  ARRANGING,
  CONFIRMING_RULE,
  isOrderMade,
  onceHere,
  ORDERS,
  pastTasks,
  settledTasks,
  takenAsOrdered,
} from './past-tasks.js';
import { processingDays } from './processing-days.js';
import { workOfDay } from './processing-work.js';
import type { PlanEvent } from './tasks/event.js';
import { byStart, hangTasks, lateTasks } from './tasks/hang-tasks.js';
import { taskFormulas } from './tasks/task-hours.js';
import type { Task } from './tasks/task.js';

export interface TaskChange {
  readonly id: string;
  readonly name: string;
  readonly before: PlainDate;
  readonly after: PlainDate;
  readonly movedDays: number;
  readonly nowLate: boolean;
}

export interface TasksPart {
  /** The days the tasks hang on. */
  readonly events: readonly PlanEvent[];
  readonly tasks: readonly Task[];
  readonly hoursInAll: NumberQuantity;
  readonly late: number;
  /** Only when an earlier arrival date was given to compare with. */
  readonly changes?: readonly TaskChange[];
}

/** Every task of a batch, hung on its events, and what moved since an earlier arrival date. */
export function planTasks(
  context: PlanContext,
  feed: FeedPart,
  heat: HeatPart | undefined,
): Found<TasksPart> {
  const { previousArrivalDate, batch } = context;
  const { first, later } = feedTrips(context, feed);
  const events = [...eventsOf(context), ...missingHeat(context, heat), ...later];
  const byHelpers = helpersOf(context);
  const heaters = heatToBuildWith(context, heat);
  const tasks = tasksOf(context, events).map((task) => {
    if (task.templateId === FIRST_FEED && first !== '')
      return { ...task, name: `${task.name}: ${first}` };
    if (GETS_BROODER.has(task.templateId) && heaters !== undefined)
      return { ...task, name: `${task.name}; ${heaters}` };
    return byHelpers(task);
  });
  const used = new Set(tasks.map(({ templateId }) => templateId));
  const part: TasksPart = {
    events,
    tasks,
    hoursInAll: quantity(
      'Hours of work in all',
      tasks.reduce((sum, t) => sum + t.hours, 0),
      'h',
      taskFormulas.sum,
      [input('Tasks', tasks.length, 'count', 'n')],
      { rows: context.tables.taskTemplates.filter(({ id }) => used.has(id)) },
    ),
    late: tasks.filter((task) => task.alreadyLate).length,
    ...(previousArrivalDate !== undefined && previousArrivalDate !== batch.arrivalDate
      ? { changes: changesSince(context, previousArrivalDate, tasks) }
      : {}),
  };
  return found(part, {
    issues: [
      ...lateTasks(tasks, 'tasks-late', { one: 'task is', many: 'tasks are' }),
      ...takenAsOrdered(context),
    ],
  });
}

/** Marks what helpers do of the work of each day of processing: their share of all its hours. */
function helpersOf(context: PlanContext): (task: Task) => Task {
  const { batch, life } = context;
  if (batch.purpose !== 'meat' || batch.processing === 'hired' || !batch.processingHelpers)
    return (task) => task;
  const { days } = processingDays(context, birdsToProcess(life));
  const ids = new Set(workOfDay(context).rows.map(({ id }) => id));
  return (task) => {
    const day = ids.has(task.templateId) && days.find(({ date }) => date === task.start);
    if (!day || day.helpers === 0) return task;
    const share = day.helperHours / day.hours;
    return { ...task, helped: { hours: round6(task.hours * share), helpers: day.helpers } };
  };
}

/** The task that fetches the feed of the first days. */
const FIRST_FEED = 'meat.fetch-starter-feed';

/**
 * Feed to fetch on one day is one trip, whatever the products. Where the first feed has a task of
 * its own, what is needed by the arrival comes with that and is no trip.
 */
function feedTrips(
  context: PlanContext,
  { phases }: FeedPart,
): { first: string; later: PlanEvent[] } {
  const { batch, tables } = context;
  const byDate = new Map<PlainDate, string[]>();
  for (const { name, deliveries } of phases) {
    for (const { buyBy, bags } of deliveries) {
      const by = String(buyBy.value);
      byDate.set(by, [
        ...(byDate.get(by) ?? []),
        `${bags.value} × ${nameOfPhase(name, batch.purpose)}`,
      ]);
    }
  }
  const trips = [...byDate].sort().map(([date, what]) => ({ date, what: what.join(', ') }));
  const hasFirst = tables.taskTemplates.some((t) => t.id === FIRST_FEED && asksFor(context, t));
  const isFirst = ({ date }: { date: PlainDate }): boolean => hasFirst && date <= batch.arrivalDate;
  return {
    first: trips
      .filter(isFirst)
      .map(({ what }) => what)
      .join(', '),
    // Numbered, so that a trip keeps its id when its day moves.
    later: trips
      .filter((trip) => !isFirst(trip))
      .map((trip, k) => ({ kind: 'delivery', number: k + 1, ...trip })),
  };
}

function tasksOf(context: PlanContext, events: readonly PlanEvent[]): Task[] {
  const { batch, facilities, life, tables, today, words } = context;
  const heat = facilityOf(facilities, 'brooder', batch.brooderId)?.heat.kind ?? 'lamp';
  const dated = tables.taskTemplates
    .map(saidOfSeason(context))
    .map(onDayOfOrder(context))
    .map(onceHere(context));
  return hangTasks(ruleBeforeOrder(context, dated, events), events, {
    id: batch.id,
    today,
    asksFor: (template) =>
      asksFor(context, template) && (!nobodyProcesses(events) || isWithoutHands(template)),
    isPast: pastTasks(context),
    isSettled: settledTasks(context),
    isShut: (date) => noPostOn(date, context) !== undefined,
    counts: { 'hundred-birds': life.placed, 'hundred-eggs': life.eggs?.eggs ?? 0 },
    idOf: (templateId, { number }) =>
      number === undefined ? templateId : `${templateId}.${number}`,
    said: (text) => saidOfHeat(heat, words.young === 'chicks' ? text : saidOf(words, text)),
  }).sort((a, b) => byStart(a, b) || a.offsetDays - b.offsetDays);
}

/** Templates without what the batch has no use for: a pen where it never goes out, shade in the cold. */
function saidOfSeason({
  weather,
  moveOutDay,
  life,
  tables,
}: PlanContext): (template: TaskTemplate) => TaskTemplate {
  const lastDay = Math.min(life.days, weather.hotMaxC.length) - 1;
  const isWarm = tables.heatStress.beginsC <= weather.hotMaxC[lastDay]!;
  return (template) => ({
    ...template,
    ...(moveOutDay === undefined ? template.keptIn : {}),
    ...(isWarm ? {} : template.inTheCold),
  });
}

/** An order that is to be made on a day the household said stands on that day, and on no other. */
function onDayOfOrder({ batch, today }: PlanContext): (template: TaskTemplate) => TaskTemplate {
  const { orderDate, arrivalDate } = batch;
  if (orderDate === undefined || orderDate <= today) return (template) => template;
  const offsetDays = daysBetween(arrivalDate, orderDate);
  return (template) =>
    ORDERS.has(template.id)
      ? {
          ...template,
          offsetDays,
          earliestOffsetDays: offsetDays,
          latestOffsetDays: offsetDays,
        }
      : template;
}

/**
 * Which rule covers selling is found out the day before birds are ordered, and somebody found who
 * processes what the household cannot. An order that is made waits for neither any more: they are
 * then due for the processing alone, and not late; one on a day that is set waits for no slot.
 */
function ruleBeforeOrder(
  context: PlanContext,
  templates: readonly TaskTemplate[],
  events: readonly PlanEvent[],
): readonly TaskTemplate[] {
  const order = templates.find((each) => ORDERS.has(each.id) && asksFor(context, each));
  const processing = events.find(({ kind }) => kind === 'processing');
  if (!order || !processing) return templates;
  const { arrivalDate, orderDate } = context.batch;
  const isMade = isOrderMade(context);
  const waits = (id: string): boolean =>
    id === ARRANGING ? !isMade && orderDate === undefined : id !== CONFIRMING_RULE || !isMade;
  const before = addDays(arrivalDate, order.offsetDays - 1);
  return templates.map((each) => {
    if (each === order) return { ...each, waitsFor: each.waitsFor.filter(waits) };
    return each.id === CONFIRMING_RULE && !isMade
      ? { ...each, offsetDays: Math.min(each.offsetDays, daysBetween(processing.date, before)) }
      : each;
  });
}

/** Whether the birds leave on a day on which nobody of the household has hands for any of them. */
const nobodyProcesses = (events: readonly PlanEvent[]): boolean =>
  events.some(({ kind }) => kind === 'hands-short') &&
  events.every(({ kind, nearDays }) => kind !== 'processing' || nearDays === NOT_OF_THE_DAY);

/** Ice, tables and bags are for who processes: nobody makes them ready for a day that is not there. */
const isWithoutHands = ({ event, processing, whoeverProcesses }: TaskTemplate): boolean =>
  event !== 'processing' || processing !== 'home' || whoeverProcesses === true;

const asksFor = (
  context: PlanContext,
  { event, purpose, origins, processing, onlyIf }: TaskTemplate,
): boolean =>
  // The cockerels of layers are processed as meat birds are.
  (purpose === undefined || purpose === context.batch.purpose || event === 'processing') &&
  (origins === undefined || origins.includes(context.batch.origin ?? 'hatchery')) &&
  (processing === undefined || processing === (context.batch.processing ?? 'home')) &&
  (onlyIf === undefined || holds(context, onlyIf));

function changesSince(
  context: PlanContext,
  previousArrivalDate: PlainDate,
  after: readonly Task[],
): TaskChange[] {
  const earlier = planContext({
    ...context,
    batch: { ...context.batch, arrivalDate: previousArrivalDate },
  });
  // Trips for feed follow from the feed plan of the new dates: they are others, not moved.
  const before = tasksOf(earlier, eventsOf(earlier));
  const old = new Map(before.map((t) => [t.id, t]));
  return after.flatMap((task) => {
    const was = old.get(task.id);
    return was && was.start !== task.start
      ? [
          {
            id: task.id,
            name: task.name,
            before: was.start,
            after: task.start,
            movedDays: daysBetween(was.start, task.start),
            nowLate: task.alreadyLate,
          },
        ]
      : [];
  });
}
