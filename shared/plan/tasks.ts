import { addDays, daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { WorkConditions } from '../farm/job.js';
import type { Formula, Mark } from '../explain/formula.js';
import { input, quantity, round6, type NumberQuantity } from '../explain/quantity.js';
import { issue } from '../problems/plan-issue.js';
import { backSchedule, type HungTask } from '../schedule/back-schedule.js';
import { rowById, type TaskTemplate } from '../tables/tables.js';
import { planContext, type PlanContext } from './context.js';
import type { FeedPart } from './feed.js';
import type { TaskHabits } from './task-habits.js';

export const taskFormulas = {
  hours: {
    id: 'task-hours',
    title: 'Hours of work',
    words:
      'A base plus an amount for every 100 birds; daily work is multiplied by its days. Most figures are estimates: put in your own.',
    symbols: 'h = (b + v·N ÷ 100)·days',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  sum: {
    id: 'task-hours-in-all',
    title: 'Hours of work in all',
    words: 'Hours of every task of the batch, summed. Most figures are estimates: put in your own.',
    symbols: 'H = Σ h',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

export type TaskAnchor = TaskTemplate['anchor'];

export interface PlannedTask extends TaskHabits {
  readonly id: string;
  readonly templateId: string;
  readonly name: string;
  readonly anchor: TaskAnchor;
  readonly offsetDays: number;
  readonly start: PlainDate;
  readonly end: PlainDate;
  readonly latestStart: PlainDate;
  readonly slackDays: number;
  readonly alreadyLate: boolean;
  readonly overdue: boolean;
  /** In all; opened by `taskHours`. */
  readonly hours: number;
  /** Days the hours are counted for: 1, or the days of daily work. */
  readonly days: number;
  readonly needs?: string;
  readonly conditions?: WorkConditions;
  /** Ids of tasks of the same batch that come first. */
  readonly waitsForIds: readonly string[];
  /** Daily work, which takes its hours every day from start to end. */
  readonly isDaily: boolean;
  readonly waitsFor: readonly string[];
  /** Why it cannot be left until the last moment. */
  readonly leadNote?: string;
  readonly ifLate: string;
  readonly mark: Mark;
}

export interface TaskChange {
  readonly id: string;
  readonly name: string;
  readonly before: PlainDate;
  readonly after: PlainDate;
  readonly movedDays: number;
  readonly nowLate: boolean;
}

export interface TasksPart {
  readonly tasks: readonly PlannedTask[];
  readonly hoursInAll: NumberQuantity;
  readonly late: number;
  /** Only when an earlier arrival date was given to compare with. */
  readonly changes?: readonly TaskChange[];
}

/** Every task of a batch, dated from its anchors, and what moved since an earlier arrival date. */
export function planTasks(context: PlanContext, feed: FeedPart): TasksPart {
  const tasks = tasksOf(context, feedTrips(feed));
  const used = new Set(tasks.map(({ templateId }) => templateId));
  const late = tasks.filter((t) => t.alreadyLate);
  if (0 < late.length) {
    context.issues.push(
      issue(
        'act',
        'tasks-late',
        `${late.length} ${late.length === 1 ? 'task is' : 'tasks are'} already late: ${late
          .slice(0, 3)
          .map((t) => t.name.toLowerCase())
          .join('; ')}${3 < late.length ? ' …' : ''}.`,
      ),
    );
  }
  const { previousArrivalDate, batch } = context;
  return {
    tasks,
    hoursInAll: quantity(
      'Hours of work in all',
      tasks.reduce((sum, t) => sum + t.hours, 0),
      'h',
      taskFormulas.sum,
      [input('Tasks', tasks.length, 'count', 'n')],
      { rows: context.tables.taskTemplates.filter(({ id }) => used.has(id)) },
    ),
    late: late.length,
    ...(previousArrivalDate !== undefined && previousArrivalDate !== batch.arrivalDate
      ? { changes: changesSince(context, previousArrivalDate, tasks) }
      : {}),
  };
}

interface Hung {
  readonly template: TaskTemplate;
  readonly name: string;
  readonly hung: HungTask;
}

/** Feed to fetch on one day: one trip, whatever the products. */
export interface FeedTrip {
  readonly by: PlainDate;
  readonly what: string;
}

export function feedTrips(feed: Pick<FeedPart, 'phases'>): FeedTrip[] {
  const byDate = new Map<PlainDate, string[]>();
  for (const { name, deliveries } of feed.phases) {
    for (const { buyBy, bags } of deliveries) {
      const by = String(buyBy.value);
      byDate.set(by, [...(byDate.get(by) ?? []), `${bags.value} × ${name.toLowerCase()}`]);
    }
  }
  return [...byDate].sort().map(([by, what]) => ({ by, what: what.join(', ') }));
}

/** The task that fetches the feed of the first days. */
const FIRST_FEED = 'meat.fetch-starter-feed';

/** Trips are numbered, so that one keeps its id when its day moves. */
const fetchOf = (template: TaskTemplate, { by, what }: FeedTrip, number: number): Hung => ({
  template,
  name: `${template.name}: ${what}`,
  hung: {
    id: `${template.id}.${number}`,
    anchorDate: by,
    offsetDays: template.offsetDays,
    lengthDays: template.lengthDays,
    waitsFor: template.waitsFor,
  },
});

function tasksOf(context: PlanContext, deliveries: readonly FeedTrip[]): PlannedTask[] {
  const anchors = anchorDates(context);
  const templates = templatesOf(context);
  // Where the first feed has a task of its own, it is not fetched a second time.
  const hasFirst = templates.some(({ id }) => id === FIRST_FEED);
  const isFirst = ({ by }: FeedTrip): boolean => hasFirst && by <= context.batch.arrivalDate;
  const first = deliveries.filter(isFirst);
  const later = deliveries.filter((trip) => !isFirst(trip));
  const hung = templates.flatMap((template): Hung[] => {
    if (template.anchor === 'delivery')
      return later.map((each, k) => fetchOf(template, each, k + 1));
    const anchorDate = anchors[template.anchor];
    if (anchorDate === undefined) return [];
    const start = addDays(anchorDate, template.offsetDays);
    const until = template.until && anchors[template.until];
    const lengthDays = until ? Math.max(1, daysBetween(start, until)) : template.lengthDays;
    return [
      {
        template,
        name:
          template.id === FIRST_FEED && 0 < first.length
            ? `${template.name}: ${first.map(({ what }) => what).join(', ')}`
            : template.name,
        hung: {
          id: template.id,
          anchorDate,
          offsetDays: template.offsetDays,
          ...(template.latestOffsetDays === undefined
            ? {}
            : { latestOffsetDays: template.latestOffsetDays }),
          lengthDays,
          isDaily: template.hoursArePerDay,
          waitsFor: template.waitsFor,
        } satisfies HungTask,
      },
    ];
  });
  const names = waitNames(context.tables.taskTemplates);
  const dated = backSchedule(
    hung.map((each) => each.hung),
    context.today,
  );
  const tasks = dated.map((date, k): PlannedTask => {
    const { template, name, hung: task } = hung[k]!;
    const days = template.hoursArePerDay ? task.lengthDays : 1;
    return {
      id: task.id,
      templateId: template.id,
      name,
      anchor: template.anchor,
      offsetDays: template.offsetDays,
      start: date.start,
      end: date.end,
      latestStart: date.latestStart,
      slackDays: date.slackDays,
      alreadyLate: date.alreadyLate,
      overdue: date.overdue,
      hours: round6(hoursEach(template, context.life.placed) * days),
      days,
      ...(template.needs === undefined ? {} : { needs: template.needs }),
      ...(template.conditions === undefined ? {} : { conditions: template.conditions }),
      ...(template.earliestOffsetDays === undefined
        ? {}
        : { earliestStart: addDays(task.anchorDate, template.earliestOffsetDays) }),
      ...(template.mayFollowDays === undefined ? {} : { mayFollowDays: template.mayFollowDays }),
      ...(template.ifNeeded ? { ifNeeded: true } : {}),
      ...(template.inOneGo ? { inOneGo: true } : {}),
      ...(template.waitDays ? { waitDays: template.waitDays } : {}),
      waitsForIds: template.waitsFor,
      isDaily: template.hoursArePerDay,
      waitsFor: names.get(template.id)!,
      ...(template.leadNote === undefined ? {} : { leadNote: template.leadNote }),
      ifLate: template.ifLate,
      mark: template.mark,
    };
  });
  return tasks.sort((a, b) =>
    a.start < b.start ? -1 : a.start > b.start ? 1 : a.offsetDays - b.offsetDays,
  );
}

const nameCache = new WeakMap<readonly TaskTemplate[], ReadonlyMap<string, readonly string[]>>();

/** What each task waits for, in words: names of tasks, and people outside the household. */
function waitNames(templates: readonly TaskTemplate[]): ReadonlyMap<string, readonly string[]> {
  let waits = nameCache.get(templates);
  if (!waits) {
    const names = new Map(templates.map((t) => [t.id, t.name]));
    waits = new Map(
      templates.map((t) => [
        t.id,
        [
          ...t.waitsFor.map((id) => names.get(id) ?? id),
          ...(t.waitsForOutside ?? []).map((who) => `the ${who}`),
        ],
      ]),
    );
    nameCache.set(templates, waits);
  }
  return waits;
}

function templatesOf({ batch, tables }: PlanContext): TaskTemplate[] {
  const processing = batch.processing ?? 'home';
  return tables.taskTemplates.filter(
    (t) =>
      t.purpose === batch.purpose &&
      (t.processing === undefined || t.processing === processing) &&
      (!t.onlyMedicated || batch.medicatedWithdrawalDays !== undefined),
  );
}

function anchorDates({
  batch,
  life,
  moveOutDay,
  dateOf,
}: PlanContext): Partial<Record<TaskAnchor, PlainDate>> {
  return {
    arrival: batch.arrivalDate,
    ...(moveOutDay === undefined ? {} : { 'move-out': dateOf(moveOutDay) }),
    ...(life.firstEggAgeDays === undefined
      ? { processing: dateOf(life.days - 1) }
      : { 'first-egg': dateOf(life.firstEggAgeDays - life.arrivalAgeDays) }),
  };
}

const hoursEach = (template: TaskTemplate, birds: number): number =>
  template.hoursBase + (template.hoursPer100Birds * birds) / 100;

/** The hours of a planned task, opened to their inputs. */
export function taskHours(
  task: PlannedTask,
  templates: readonly TaskTemplate[],
  birdsPlaced: number,
): NumberQuantity {
  const template = rowById(templates, task.templateId);
  return quantity(
    `Hours: ${task.name}`,
    task.hours,
    'h',
    taskFormulas.hours,
    [
      input('Base', template.hoursBase, 'h', 'b'),
      input('For every 100 birds', template.hoursPer100Birds, 'h', 'v'),
      input('Birds placed', birdsPlaced, 'count', 'N'),
      input('Days', task.days, 'day'),
    ],
    { rows: [template] },
  );
}

function changesSince(
  context: PlanContext,
  previousArrivalDate: PlainDate,
  after: readonly PlannedTask[],
): TaskChange[] {
  const earlier = planContext({
    ...context,
    batch: { ...context.batch, arrivalDate: previousArrivalDate },
  });
  // Feed trips carry their date in their id, so that they are not compared.
  const before = tasksOf(earlier, []);
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
