import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import { finishDay, placedMinutes } from '../../schedule/work.js';
import { formatDate } from '../../units/dates.js';
import { listed } from '../../units/listed.js';
import { templateOf } from '../tasks/task-hours.js';
import type { Task } from '../tasks/task.js';
import { isShort, runSaid, shortRuns, type EventToMove } from './event-to-move.js';
import { laterTask, movableEvents, type Movable } from './later-event.js';
import type { WholeWork } from './whole-work.js';
import type { DatedWork, WorkRequest } from './work-request.js';
import { isWorthTelling } from './worth-telling.js';

export interface OutOnceReady {
  /** The household's work with each herd that was to go out today out once all is ready for it. */
  readonly request: WorkRequest;
  readonly put: readonly EventToMove[];
}

/**
 * Herds that the grass has go out today, of which no move was told, and for which fence, water or first
 * paddocks are not done: that work goes on the next days with hours, late as it is, and the turn-out on
 * the day after it. A mineral that began late does not hold them: it is said, and the vet is asked.
 *
 * @param fit the work of a request in its hours, by a few plans
 */
export function outOnceReady(
  given: WorkRequest,
  fit: (request: WorkRequest) => WholeWork,
): OutOnceReady {
  let request = given;
  const mostDays = given.tables.judgements.work.turnOutWaitsDays.value;
  const put: EventToMove[] = [];
  for (const herd of given.work) {
    const movable = movableEvents(herd, given.today).find(
      ({ event }) => event.date === given.today,
    );
    if (movable?.kind !== 'turn-out') continue;
    const undone = undoneFor(given, herd, movable);
    if (undone.length === 0) continue;
    const outIn = (days: number): WorkRequest => ({
      ...request,
      work: request.work.map((each) =>
        each.id === herd.id ? outLater(herd, movable, days) : each,
      ),
    });
    const { placed, without } = placesOf(fit(outIn(mostDays)), undone);
    if (placed.length === 0) continue;
    const days = 1 + Math.max(...placed.map(({ day }) => day));
    request = outIn(days);
    const to = addDays(given.today, days);
    put.push({
      ...{ id: movable.event.id, kind: 'turn-out', ofId: herd.id, name: movable.event.name },
      ...{ from: given.today, to, isPutOff: true },
      keys: undone.map(({ key }) => key),
      names: undone.map(({ name }) => name),
      said: sayPut(given, herd, { movable, to, without }),
    });
  }
  return { request, put };
}

interface Undone {
  readonly key: string;
  readonly name: string;
}

/** Whether it makes ready for the day on which they go out. */
const isReadying = (task: Task, { event }: Movable): boolean =>
  task.event === 'turn-out' && task.noUseAfter === event.date && task.isOver !== true;

/** What makes ready for it by somebody's hours, and was neither done nor struck out. */
function undoneFor({ progress, tables }: WorkRequest, work: DatedWork, movable: Movable): Undone[] {
  const told = new Set(
    progress.flatMap(({ key, doneOn, struckOut }) =>
      doneOn !== undefined || struckOut === true ? [key] : [],
    ),
  );
  return work.tasks
    .filter((task) => isReadying(task, movable) && !templateOf(tables, task).animalsNeedIt)
    .map(({ id, name }) => ({ key: `${work.kind}/${work.id}/${id}`, name }))
    .filter(({ key }) => !told.has(key));
}

/** The turn-out so many days later, and what makes ready for it due today: it is done as soon as can be. */
function outLater(work: DatedWork, movable: Movable, days: number): DatedWork {
  const { date, id } = movable.event;
  const to = addDays(date, days);
  return {
    ...work,
    ...(work.round ? { round: { ...work.round, outLaterDays: days, outOn: to } } : {}),
    events: work.events.map((event) => (event.id === id ? { ...event, date: to } : event)),
    tasks: work.tasks.map((task): Task => {
      if (task.event !== 'turn-out') return task;
      if (isReadying(task, movable)) {
        const { earliestStart = task.start } = task;
        return { ...task, earliestStart, start: date, end: date, spareDays: 0, noUseAfter: to };
      }
      return task.offsetDays < 0 ? task : laterTask(task, (on) => addDays(on, days));
    }),
  };
}

/** The day on which each is done, and what has no place. */
function placesOf(
  { needs, problem, fitted }: WholeWork,
  undone: readonly Undone[],
): { placed: { readonly day: number }[]; without: string[] } {
  const placed: { readonly day: number }[] = [];
  const without: string[] = [];
  for (const { key, name } of undone) {
    const at = needs.findIndex((need) => need.key === key);
    if (at < 0) continue;
    const pieces = fitted.plan[at]!;
    const isWhole = !isWorthTelling((problem.jobs[at]!.minutes - placedMinutes(pieces)) / 60);
    if (0 < pieces.length && isWhole) placed.push({ day: finishDay(pieces) });
    else without.push(name);
  }
  return { placed, without };
}

function sayPut(
  request: WorkRequest,
  work: DatedWork,
  { movable, to, without }: { movable: Movable; to: PlainDate; without: readonly string[] },
): string {
  const { farm, today } = request;
  const on = formatDate(to, { units: farm.units, today });
  const waitDays = daysBetween(movable.event.date, to);
  // What is not begun is begun today.
  const running = shortRuns(request, work, { movable, begins: () => 0 })
    .map((run) => ({ ...run, days: run.days + waitDays }))
    .filter(isShort)
    .map((run) => ` ${runSaid(run, to, request)}`);
  const open =
    without.length === 0
      ? ''
      : ` There is no time for ${listed(without.map((name) => `“${name}”`))}: see to that too before they go out.`;
  return `With the hours there are it is ready for them to go out on ${on}; until then they stay on hay. Tick what is done already: they can go out sooner. Are they out, tell the move.${open}${running.join('')}`;
}
