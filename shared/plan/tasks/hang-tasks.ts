import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import { round6 } from '../../explain/quantity.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import { backSchedule, type HungTask, type ScheduledTask } from '../../schedule/back-schedule.js';
import type { TaskTemplate, WorkUnit } from '../../tables/task-template.js';
import type { PlanEvent } from './event.js';
import { hoursOf } from './task-hours.js';
import type { Task } from './task.js';

/** The batch or herd that tasks are hung for. */
export interface TasksFor {
  readonly id?: string | undefined;
  readonly today: PlainDate;
  /** Whether it has this work at all. */
  readonly asksFor: (template: TaskTemplate) => boolean;
  /** Its birds, head or acres, by the unit of work that counts them. */
  readonly counts: Readonly<Partial<Record<WorkUnit, number>>>;
  /** Whether its time is past, besides what its own dates say; left out, nothing is. */
  readonly isPast?: (template: TaskTemplate, event: PlanEvent, dates: DatedSpan) => boolean;
  /** Whether what was told leaves nothing of it to do. */
  readonly isSettled?: (template: TaskTemplate, event: PlanEvent) => boolean;
  /** Id of a task among its own: it must stay the same when dates move, as ticks are kept by it. */
  readonly idOf: (templateId: string, event: PlanEvent) => string;
  /** Days on which nobody answers in a shop or an office: what needs one stands before them. */
  readonly isShut?: (date: PlainDate) => boolean;
  /** How the texts of templates are said of these animals, where not as they are written. */
  readonly said?: (text: string) => string;
}

/** When work ends, and how much later it could. */
export type DatedSpan = Pick<ScheduledTask, 'end' | 'spareDays'>;

interface Hung {
  readonly template: TaskTemplate;
  readonly event: PlanEvent;
  readonly waits: Task['waits'];
  /** What it waits for in words: tasks there are, and people outside the household. */
  readonly waitsFor: readonly string[];
  readonly task: HungTask;
}

/**
 * Hangs templates on the events of one batch or herd: each that it asks for on every event of its
 * kind, dated back from it through the chain of what waits. In the order of events and templates.
 *
 * @throws Error when a template counts a unit of work that is not given, or goes on until an event
 *   that is not given and has no length of its own, or when templates wait for each other in a circle
 */
export function hangTasks(
  table: readonly TaskTemplate[],
  events: readonly PlanEvent[],
  of: TasksFor,
): Task[] {
  const templates = table.filter(of.asksFor).map((template) => saidTemplate(template, of));
  const byId = new Map(templates.map((template) => [template.id, template]));
  const firstOf = (kind: PlanEvent['kind']): PlanEvent | undefined =>
    events.find((event) => event.kind === kind);
  const lastDateOf = (kind: PlanEvent['kind']): PlainDate | undefined =>
    events.reduce<PlainDate | undefined>(
      (last, { kind: of, date }) =>
        of === kind && (last === undefined || last < date) ? date : last,
      undefined,
    );
  const eventOf = (id: string, event: PlanEvent): PlanEvent | undefined => {
    const template = byId.get(id);
    if (!template || template.event !== event.kind) return template && firstOf(template.event);
    return isOfClass(template, event) ? onceFor(template, event, events)[0] : undefined;
  };
  const hung = events.flatMap((each) =>
    templates
      .filter(
        (template) =>
          template.event === each.kind && isOfClass(template, each) && isNear(template, each),
      )
      .flatMap((template): Hung[] => {
        const event = carrierOf(template, each, events);
        if (!event) return [];
        const until = template.until && lastDateOf(template.until);
        const { waitDays, mostWaitDays } = template;
        const before = template.waitsFor.filter((id) => eventOf(id, event) !== undefined);
        const waits = before.map((id) => ({
          id: of.idOf(id, eventOf(id, event)!),
          days: waitDays?.[id] ?? 0,
          ...(mostWaitDays?.[id] === undefined ? {} : { atMostDays: mostWaitDays[id] }),
        }));
        const task: Writable<HungTask> = {
          id: of.idOf(template.id, event),
          anchorDate: event.date,
          offsetDays: openOffsetDays(template, event, of),
          lengthDays: lengthOf(template, event, until),
          isDaily: template.isDaily,
          waitsFor: waits.map(({ id }) => id),
        };
        const { latestOffsetDays } = template;
        if (latestOffsetDays !== undefined) task.latestOffsetDays = latestOffsetDays;
        const waitsFor = [
          ...before.map((id) => byId.get(id)!.name),
          ...(template.waitsForOutside ?? []).map((who) => `the ${who}`),
        ];
        return [{ template, event, waits, waitsFor, task }];
      }),
  );
  const dated = backSchedule(
    hung.map((each) => each.task),
    of.today,
  );
  return dated.map((dates, k) => taskOf(hung[k]!, dates, of));
}

/** A call or a trip to the store stands on the last day before its own on which there is one. */
function openOffsetDays(
  { offsetDays, conditions }: TaskTemplate,
  { date }: PlanEvent,
  { isShut, today }: TasksFor,
): number {
  if (!conditions?.shopsOpen || !isShut) return offsetDays;
  let open = offsetDays;
  while (offsetDays - LONGEST_SHUT_DAYS < open && isShut(addDays(date, open))) open--;
  // What is asked for today is not late because shops are closed today.
  return addDays(date, open) < today && today <= addDays(date, offsetDays) ? offsetDays : open;
}

/** No more than this is looked for a day on which shops are open. */
const LONGEST_SHUT_DAYS = 7;

/**
 * The event that a task hangs on: its own, or the first day of those it is done once for, with the
 * animals of all. Of these
 * the first in the list carries it, so that its id stays when another falls earlier.
 */
function carrierOf(
  template: TaskTemplate,
  event: PlanEvent,
  events: readonly PlanEvent[],
): PlanEvent | undefined {
  const alike = onceFor(template, event, events);
  if (alike[0] !== event) return undefined;
  if (alike.length === 1) return event;
  const dates = alike.map(({ date }) => date).sort();
  // What comes with the first alone is not what comes with all of them.
  const { what: _what, ...first } = event;
  const { unit } = template;
  const isCounted = alike.every(({ counts }) => counts?.[unit] !== undefined);
  const count = alike.reduce((sum, { counts }) => sum + (counts?.[unit] ?? 0), 0);
  const counts = isCounted ? { counts: { ...first.counts, [unit]: count } } : {};
  return { ...first, ...counts, date: dates[0]! };
}

/** The events that some work is done once for, among them the one given. */
function onceFor(
  { onceWithinDays: days }: TaskTemplate,
  event: PlanEvent,
  events: readonly PlanEvent[],
): readonly PlanEvent[] {
  if (days === undefined) return [event];
  return events.filter(
    ({ kind, date }) => kind === event.kind && Math.abs(daysBetween(date, event.date)) <= days,
  );
}

/** Work with cows of some classes is none with others. */
const isOfClass = ({ classes }: TaskTemplate, { classId }: PlanEvent): boolean =>
  classes === undefined || classId === undefined || classes.includes(classId);

function saidTemplate(template: TaskTemplate, { said }: TasksFor): TaskTemplate {
  if (!said) return template;
  const { name, ifLate, ifEarly, leadNote, needs } = template;
  return {
    ...template,
    name: said(name),
    ifLate: said(ifLate),
    ...(ifEarly === undefined ? {} : { ifEarly: said(ifEarly) }),
    ...(leadNote === undefined ? {} : { leadNote: said(leadNote) }),
    ...(needs === undefined ? {} : { needs: said(needs) }),
  };
}

const isNear = (template: TaskTemplate, event: PlanEvent): boolean =>
  isOfTheDay(template, event) ||
  (event.once === 'before' && template.offsetDays < 0) ||
  (event.once === 'after' && 0 < template.offsetDays);

const isOfTheDay = ({ offsetDays }: TaskTemplate, { nearDays }: PlanEvent): boolean =>
  nearDays === undefined || Math.abs(offsetDays) <= nearDays;

function lengthOf(
  { id, offsetDays, lengthDays, until, isDaily, daysOfOne }: TaskTemplate,
  event: PlanEvent,
  untilDate: PlainDate | undefined,
): number {
  if (untilDate !== undefined) return Math.max(1, daysBetween(event.date, untilDate) - offsetDays);
  if (lengthDays === undefined)
    throw new Error(`${id} goes on until ${until}, which there is nothing of here.`);
  if (isDaily && event.dailyDays !== undefined) return event.dailyDays;
  return isDaily && daysOfOne !== undefined && isOfOne(event) ? daysOfOne : lengthDays;
}

const isOfOne = ({ counts }: PlanEvent): boolean => counts?.['ten-head'] === 1;

function lastOfUse(
  { beforeEvent, lapses, latestOffsetDays }: TaskTemplate,
  { date }: PlanEvent,
): PlainDate | undefined {
  if (beforeEvent) return date;
  return lapses && latestOffsetDays !== undefined ? addDays(date, latestOffsetDays) : undefined;
}

function taskOf(
  { template, event, waits, waitsFor, task }: Hung,
  dates: ScheduledTask,
  of: TasksFor,
): Task {
  const count = event.counts?.[template.unit] ?? of.counts[template.unit];
  if (count === undefined)
    throw new Error(`${template.id} counts ${template.unit}, which there is nothing of here.`);
  const { hours, units } = hoursOf(template, count);
  const days = template.isDaily ? task.lengthDays : 1;
  const noUseAfter = lastOfUse(template, event);
  const lastDay = noUseAfter ?? (template.isDaily ? dates.end : undefined);
  const isSettled = of.isSettled?.(template, event) === true;
  const isOver =
    isSettled ||
    (lastDay !== undefined && lastDay < of.today && !template.goesOn) ||
    of.isPast?.(template, event, dates) === true;
  // Daily work that has begun goes on, and what is done on demand waits for its cause: neither is late.
  const isOpen = !isOver && !template.onDemand && !(template.isDaily && dates.start < of.today);
  // Built by assignment: a plan makes dozens, and conditional spreads cost more than the sums.
  const result: Writable<Task> = {
    id: task.id,
    templateId: template.id,
    name: nameOf(template, event),
    event: event.kind,
    offsetDays: template.offsetDays,
    start: dates.start,
    end: dates.end,
    latestStart: dates.latestStart,
    spareDays: dates.spareDays,
    // What lapses is asked for until it does: it is never late.
    alreadyLate: isOpen && !template.lapses && dates.alreadyLate,
    overdue: isOpen && dates.overdue,
    hours: round6(hours * days),
    units: round6(units),
    days,
    isDaily: template.isDaily,
    waits,
    waitsFor,
    ifLate: template.ifLate,
    mark: template.mark,
  };
  const { earliestOffsetDays, spreadOver, daysOfOne, needs, conditions, mayFollowDays, leadNote } =
    template;
  if (of.id !== undefined) result.belongsToId = of.id;
  if (earliestOffsetDays !== undefined)
    result.earliestStart = addDays(event.date, earliestOffsetDays);
  if (noUseAfter !== undefined) result.noUseAfter = noUseAfter;
  if (isOver) result.isOver = true;
  if (isSettled) result.isSettled = true;
  if (mayFollowDays !== undefined) result.mayFollowDays = mayFollowDays;
  if (spreadOver) {
    const days = (isOfOne(event) ? daysOfOne : undefined) ?? spreadOver.days;
    result.spreadOver = spanOf(event.date, { ...spreadOver, days });
  }
  if (leadNote !== undefined) result.leadNote = leadNote;
  if (template.ifEarly !== undefined) result.ifEarly = template.ifEarly;
  if (needs !== undefined) result.needs = needs;
  if (conditions) result.conditions = conditions;
  if (template.goesOn) result.goesOn = true;
  if (template.notSplit) result.notSplit = true;
  if (template.onDemand) result.onDemand = true;
  return result;
}

/** “Chick starter: first delivery”, but “Daisy: navel, tag, record”: whose work it is comes first. */
function nameOf(template: TaskTemplate, event: PlanEvent): string {
  const { name } = template;
  const { animal } = event;
  const what = isOfTheDay(template, event) ? event.what : undefined;
  if (animal) return `${animal.name}: ${name[0]!.toLowerCase()}${name.slice(1)}`;
  return what === undefined ? name : `${name}: ${what}`;
}

type Writable<T> = { -readonly [K in keyof T]: T[K] };

function spanOf(
  date: PlainDate,
  { fromOffsetDays, days }: NonNullable<TaskTemplate['spreadOver']>,
): { from: PlainDate; to: PlainDate } {
  const from = addDays(date, fromOffsetDays);
  return { from, to: addDays(from, days - 1) };
}

/** By the day they start; those of one day stay in their order. */
export const byStart = (a: Task, b: Task): number =>
  a.start < b.start ? -1 : a.start > b.start ? 1 : 0;

/** Says how many tasks are already late, and names the first three. */
export function lateTasks(
  tasks: readonly Task[],
  code: string,
  words: { readonly one: string; readonly many: string },
): PlanIssue[] {
  const late = tasks.filter((task) => task.alreadyLate);
  if (late.length === 0) return [];
  const first = late.slice(0, 3).map((task) => task.name.toLowerCase());
  return [
    issue(
      'act',
      code,
      `${late.length} ${late.length === 1 ? words.one : words.many} already late: ${first.join('; ')}${first.length < late.length ? ' …' : ''}.`,
    ),
  ];
}
