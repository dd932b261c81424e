import { addDays, daysBetween } from '../../calendar/plain-date.js';
import { isGrownUp } from '../../farm/who-is-there.js';
import { isApart } from '../../pasture/quarantine.js';
import { leftUntold } from '../left-untold.js';
import { hoursOf, templateOf } from '../tasks/task-hours.js';
import { keyDateOn } from '../tasks/event.js';
import type { Task } from '../tasks/task.js';
import { isAskedAfter } from './asked-after.js';
import { comesOn } from './chore-days.js';
import { HAY, herdLooks, herdRounds, OF_THOSE_APART, type HerdRound } from './herd-round.js';
import { readRefills } from './refill-chores.js';
import { sourcedOf, type PlannedChore, type Reading, type WorkNeed } from './work-need.js';
import type { WorkPerson } from './work-people.js';
import type { DatedWork, WorkRequest } from './work-request.js';

/** Reads the tasks of a batch or herd: work that is done once, and chores. */
export function readTasks(request: WorkRequest, work: DatedWork, reading: Reading): void {
  const { id, birds } = work;
  const left = birds && leftUntold({ id, plan: birds }, request);
  for (const task of work.tasks) {
    const key = `${work.kind}/${work.id}/${task.id}`;
    // On which day they go is asked for: their processing stands before that day again.
    const isAsked = left !== undefined && task.event === 'processing';
    if (isAsked && reading.marks.get(key)?.doneOn === undefined) continue;
    const everyDay = choreSpan(task);
    if (left !== undefined && everyDay && addDays(left, -1) <= everyDay.to) {
      readChore(request, { work, task, key, everyDay, isLonger: true }, reading);
      continue;
    }
    // What nobody has to do is known only where something was said of it.
    const isOver =
      task.onDemand === true ||
      task.isSettled === true ||
      (task.isOver === true && (isToldOut(work, task) || !isStillPlanned(request, key)));
    // Who fetched the birds has told so; somebody looks at them all the same.
    if (task.isSettled) readLook(request, { work, task, key }, reading);
    const isAfter = isOver && !everyDay && isAskedAfter(request, task, key);
    if (isOver && !isAfter && !reading.marks.has(key)) continue;
    if (!isOver) readLook(request, { work, task, key }, reading);
    if (everyDay && !isOver) readChore(request, { work, task, key, everyDay }, reading);
    else readTask(request, { work, task, key, isOver: isOver && !isAfter }, reading);
  }
  shareRounds(request, work, reading);
  readRefills(request, work, reading);
  if (work.round) readRound(request, work.round, reading);
}

/**
 * Daily work of one kind that is done for several groups of a herd on the same days is one walk: what
 * it takes whatever the head counts once.
 */
function shareRounds({ tables }: WorkRequest, work: DatedWork, { chores, marks }: Reading): void {
  const kindOf = new Map(
    work.tasks.map(({ id, templateId }) => [`${work.kind}/${work.id}/${id}`, templateId]),
  );
  const known: PlannedChore[] = [];
  for (const chore of chores.splice(0)) {
    const kind = kindOf.get(chore.key);
    const alike = known.filter(({ key }) => kind !== undefined && kindOf.get(key) === kind);
    const isOwn = marks.get(chore.key)?.ownHours !== undefined;
    known.push(
      ...(alike.length === 0 || isOwn ? [chore] : besideOthers(chore, alike, tables, kind)),
    );
  }
  chores.push(...known);
}

/** A chore in spans of days, of which those it shares with others have the hours of its head alone. */
function besideOthers(
  chore: PlannedChore,
  others: readonly PlannedChore[],
  tables: WorkRequest['tables'],
  templateId: string | undefined,
): PlannedChore[] {
  const { hoursBase } = tables.herdTaskTemplates.find(({ id }) => id === templateId) ?? {
    hoursBase: 0,
  };
  const isShared = (day: number): boolean => others.some((other) => comesOn(other, day));
  const bounds = others.flatMap(({ fromDay, toDay }) => [fromDay, toDay + 1]);
  const starts = [chore.fromDay, ...bounds.filter((d) => chore.fromDay < d && d <= chore.toDay)];
  return [...new Set(starts)]
    .sort((a, b) => a - b)
    .map((fromDay, k, all) => ({
      ...chore,
      fromDay,
      toDay: (all[k + 1] ?? chore.toDay + 1) - 1,
      hoursPerDay: chore.hoursPerDay - (isShared(fromDay) ? hoursBase : 0),
    }));
}

/** It makes ready for a turn-out that was told: nothing of it is to come. */
const isToldOut = ({ round }: DatedWork, { event, noUseAfter, isOver }: Task): boolean =>
  isOver === true &&
  event === 'turn-out' &&
  noUseAfter !== undefined &&
  round?.herd.inPaddockId !== undefined;

/** What the last plan has on a day to come does not vanish before it. */
const isStillPlanned = ({ kept, today }: WorkRequest, key: string): boolean =>
  kept?.jobs[key]?.pieces.some(({ date }) => today <= date) ?? false;

/** The round of a herd on the days that no other daily chore of it asks for. */
function readRound(
  { today, tables }: WorkRequest,
  round: HerdRound,
  { days, marks, chores, looks }: Reading,
): void {
  const others = chores.filter(({ belongsTo }) => belongsTo?.id === round.herd.id);
  const { groups } = round.herd;
  const isSeen = (day: number): boolean => {
    const on = addDays(today, day);
    const someApart = groups.some((group) => isApart(groups, group, on, tables));
    return others.some(
      (chore) => comesOn(chore, day) && !(someApart && chore.key.endsWith(OF_THOSE_APART)),
    );
  };
  const isFed = (day: number): boolean =>
    others.some((chore) => comesOn(chore, day) && chore.key.endsWith(HAY));
  for (const chore of herdRounds({ ...round, tables, today, days, isSeen, isFed }))
    chores.push({ ...chore, hoursPerDay: marks.get(chore.key)?.ownHours ?? chore.hoursPerDay });
  looks.push(...herdLooks({ ...round, tables, today, days }));
}

interface OneTask {
  readonly work: DatedWork;
  readonly task: Task;
  readonly key: string;
}

/** How often animals want to be looked at while the task goes on. */
function readLook(
  { today, tables }: WorkRequest,
  { work, task }: OneTask,
  { days, looks }: Reading,
): void {
  const { looks: asked } = templateOf(tables, task);
  if (!asked) return;
  const fromDay = daysBetween(today, task.start);
  const end = task.goesOn ? Infinity : daysBetween(today, task.end);
  const toDay = Math.min(end, fromDay + (asked.days ?? Infinity) - 1);
  if (toDay < 0 || days <= fromDay) return;
  const { everyH } = asked;
  looks.push({
    of: { id: work.id, name: work.name },
    everyH,
    fromDay: Math.max(0, fromDay),
    toDay,
    ...(task.event === 'calving' ? { isOfCalving: true as const } : {}),
  });
}

/** @param isLonger the animals may be there after its last day: it is done today and tomorrow as before */
function readChore(
  { today, tables }: WorkRequest,
  {
    work,
    task,
    key,
    everyDay,
    isLonger = false,
  }: OneTask & { everyDay: { from: string; to: string }; isLonger?: boolean },
  { days, marks, chores }: Reading,
): void {
  const fromDay = daysBetween(today, everyDay.from);
  const lastDay = daysBetween(today, everyDay.to);
  const toDay = task.goesOn ? Infinity : isLonger ? 1 : lastDay;
  if (toDay < 0 || days <= fromDay) return;
  const { ownHours, notBefore = today } = marks.get(key) ?? {};
  const template = templateOf(tables, task);
  chores.push({
    key,
    name: task.name,
    belongsTo: { kind: work.kind, id: work.id, name: work.name },
    hoursPerDay: ownHours ?? task.hours / (lastDay - fromDay + 1),
    row: sourcedOf(template),
    ...(template.rounds ? { rounds: template.rounds } : {}),
    // What comes with each animal is an average of its days: no day has just that much of it.
    ...(task.spreadOver && ownHours === undefined ? { hoursEach: hoursOf(template, 1).hours } : {}),
    ...(template.forWhom === undefined ? {} : { forWhom: template.forWhom }),
    fromDay: Math.max(0, fromDay, daysBetween(today, notBefore)),
    toDay: Math.min(days - 1, toDay),
  });
}

function readTask(
  request: WorkRequest,
  { work, task, key, isOver }: OneTask & { isOver: boolean },
  { learned, marks, needs }: Reading,
): void {
  const { today, tables, people } = request;
  const { graceDays, closeDays, longPastDays } = tables.judgements.work;
  const fromDay = daysBetween(today, task.earliestStart ?? task.start);
  const dueDay = daysBetween(today, task.end) + task.spareDays + (task.mayFollowDays ?? 0);
  const template = templateOf(tables, task);
  // What makes ready for an event to come is not taken as done: nobody would mend the fence any more.
  const isOfUse = task.noUseAfter !== undefined && today <= task.noUseAfter;
  const isOfNeed = template.animalsNeedIt && !task.isOver;
  const isLongPast = dueDay < -longPastDays.value && !isOfUse && !isOfNeed;
  const isAfter =
    (isLongPast || task.isOver === true) &&
    !isOver &&
    (isToldOut(work, task) || !isStillPlanned(request, key)) &&
    isAskedAfter(request, task, key);
  if (isLongPast && !isAfter && !marks.has(key) && !isStillPlanned(request, key)) return;
  const isOnItsDay = isFixed(work.kind, task);
  const lastUseDay = task.noUseAfter === undefined ? Infinity : daysBetween(today, task.noUseAfter);
  const prepares =
    task.noUseAfter === undefined || !CAN_WAIT.has(task.event)
      ? undefined
      : keyDateOn(work.events, work.id, { kind: task.event, date: task.noUseAfter });
  const kind = `${work.kind}/${task.templateId}`;
  const conditions = ownConditions(task, template.fewerTakeLonger ? people : []);
  const ownHours = task.hours - (task.helped?.hours ?? 0);
  const reckonedHours = ownHours / (conditions.peopleNeeded ?? 1);
  const known = learned.get(kind);
  const { outByDay } = tables.work;
  needs.push({
    key,
    name: task.name,
    row: sourcedOf(template),
    ...(isOnItsDay && (template.looks?.everyH ?? Infinity) < outByDay.toH - outByDay.fromH
      ? { isThroughTheDay: true as const }
      : {}),
    belongsTo: { kind: work.kind, id: work.id, name: work.name },
    kind,
    hours: reckonedHours * (known?.factor ?? 1),
    reckonedHours,
    ...(known ? { learned: { ...known, reckonedHours } } : {}),
    fromDay,
    dueDay: isAfter ? Math.min(-1, dueDay) : dueDay,
    untilDay: isAfter
      ? -1
      : isOnItsDay
        ? Math.max(0, dueDay)
        : // What can kill them is asked for up to its event, however late.
          (template.animalsNeedIt || (prepares && work.round?.outLaterDays !== undefined)) &&
            task.noUseAfter !== undefined
          ? lastUseDay
          : Math.min(dueDay + graceDays.value, lastUseDay),
    conditions,
    canBeSpread: !isOnItsDay && !task.notSplit,
    priority:
      template.animalsNeedIt || isClose(work.kind, task, closeDays.value) ? 'must' : 'should',
    // Work of one day follows each other within it: one that is short of hours holds up no other.
    waitsFor: isOnItsDay ? [] : waitsOf(work, task),
    follows: waitsOf(work, task),
    ifLate: task.ifLate,
    ...(task.buys === undefined ? {} : { buys: task.buys }),
    ...(template.animalsNeedIt ? { animalsNeedIt: true as const } : {}),
    ...(template.animalsNeedIt && task.event === 'processing' ? { isForMeat: true as const } : {}),
    ...(template.lapses ? { lapses: true as const } : {}),
    ...(task.noUseAfter === undefined ? {} : { isBeforeEvent: true as const, lastUseDay }),
    ...(prepares ? { prepares: { ...prepares, kind: task.event } } : {}),
    ...(isOver ? { isOver } : {}),
  });
}

/**
 * What the household must bring: helpers stand in for people, all but one.
 *
 * @param people who can do it all the same where they are fewer than it is meant for
 */
function ownConditions(
  { conditions = {}, helped }: Task,
  people: readonly WorkPerson[],
): NonNullable<Task['conditions']> {
  const { peopleNeeded } = conditions;
  if (peopleNeeded === undefined) return conditions;
  const adults = people.filter((each) => isGrownUp(each) && each.comesInFor === undefined).length;
  const asked = adults === 0 ? peopleNeeded : Math.min(peopleNeeded, adults);
  return { ...conditions, peopleNeeded: Math.max(1, asked - (helped?.helpers ?? 0)) };
}

/** Events that can be left until all is ready. */
const CAN_WAIT = new Set<Task['event']>(['arrival', 'move-out', 'turn-out']);

const waitsOf = ({ kind, id: of }: DatedWork, { waits }: Task): WorkNeed['waitsFor'] =>
  waits.map(({ id, ...wait }) => ({ key: `${kind}/${of}/${id}`, ...wait }));

/** Work on the one day of its event, or on a set day before it; what comes after can wait. */
const isFixed = (kind: DatedWork['kind'], task: Task): boolean =>
  task.spareDays === 0 &&
  task.start === task.end &&
  task.earliestStart === undefined &&
  // Hay is not made on a set day: it waits for dry ones.
  (kind === 'herd' ? task.mayFollowDays === undefined : task.offsetDays <= 0);

/** Days on which a task takes hours every day; undefined for work that is done once. */
function choreSpan(task: Task): { from: string; to: string } | undefined {
  if (task.spreadOver) return task.spreadOver;
  return task.isDaily ? { from: task.start, to: task.end } : undefined;
}

/** Work with cattle is all called for; of work with birds, what lies close to its event. */
const isClose = (kind: DatedWork['kind'], { offsetDays }: Task, days: number): boolean =>
  kind === 'herd' || Math.abs(offsetDays) <= days;
