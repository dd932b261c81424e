import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import { formatDate } from '../../units/dates.js';
import { TURN_OUT } from '../../farm/herd-move-work.js';
import { inOwnUnits } from '../../units/own-units.js';
import { found, type Found } from '../found.js';
import { lastDayOf } from '../past-tasks.js';
import type { PlanEvent } from '../tasks/event.js';
import { byStart, hangTasks, lateTasks } from '../tasks/hang-tasks.js';
import type { Task } from '../tasks/task.js';
import { goOf, mowingGoes, type MowingGo } from './mowing-goes.js';
import type { PastureContext } from './pasture-context.js';
import type { HerdDates } from './herd-dates.js';
import type { Chosen } from './surplus.js';
import type { TurningPart } from './turning-points.js';

export interface HerdTasksPart {
  /** The days the tasks of each herd hang on, in the order of the herds. */
  readonly events: readonly (readonly PlanEvent[])[];
  /** Of all herds, by date. */
  readonly tasks: readonly Task[];
}

const M2_PER_ACRE = 4046.8564224;
/** A short ton. */
const KG_PER_TON = 907.18474;

/**
 * Work hung on turn-out, arrivals and calvings of every herd, by date; that of the hay stands with
 * the first herd.
 */
export function planHerdTasks(
  context: PastureContext,
  turning: TurningPart,
  { books }: Chosen,
): Found<HerdTasksPart> {
  const events = turning.herds.map((dates, h) => [
    ...eventsOf(dates, context),
    ...(h === 0 ? mowingGoes(context, books).map((go) => eventOf(context, go)) : []),
  ]);
  const longPast = addDays(context.today, -context.tables.judgements.work.longPastDays.value);
  const tasks = context.herds.flatMap((herd, h): Task[] => {
    return hangTasks(context.tables.herdTaskTemplates, events[h]!, {
      id: herd.id,
      today: context.today,
      asksFor: ({ classes }) =>
        classes === undefined || herd.groups.some(({ classId }) => classes.includes(classId)),
      // As the plan of the work takes it: what was due so long ago is done, but for what makes ready
      // for a day that is still to come, or can kill them on it.
      // What makes ready for going out is over once they are out.
      isPast: (template, event, dates) =>
        (event.kind === 'turn-out' &&
          template.beforeEvent === true &&
          herd.inPaddockId !== undefined &&
          event.date <= context.today) ||
        (lastDayOf(template, event, dates) < longPast &&
          !((template.beforeEvent || template.animalsNeedIt) && context.today <= event.date)),
      // Told onto grass it has been turned out, whoever ticked it.
      isSettled: ({ id }, { date }) =>
        id === TURN_OUT &&
        herd.inPaddockId !== undefined &&
        (date < context.today || date === herd.inSince),
      counts: {
        'ten-head': Math.max(...context.herdDays[h]!.head),
        acre: context.areaM2 / M2_PER_ACRE,
      },
      said: (text) => inOwnUnits(text, context.farm.units),
      idOf: (templateId, event) => `${ownerOf(herd.id, event)}.${templateId}`,
    });
  });
  const issues = lateTasks(tasks, 'herd-tasks-late', {
    one: 'herd task is',
    many: 'herd tasks are',
  });
  return found({ events, tasks: tasks.map(onceHayIsIn(tasks)).sort(byStart) }, { issues });
}

const MOW = 'hay.mow';
const BALE = 'hay.bale';

/**
 * No go is mown before the hay of the last one is baled: no more may be down at once. Hay that no day
 * was found for is not in the way.
 */
export const onceHayIsIn =
  (tasks: readonly Task[]) =>
  (task: Task): Task => {
    if (task.templateId !== MOW) return task;
    const goesBefore = tasks.filter(
      (each) => each.templateId === BALE && each.belongsToId === task.belongsToId,
    );
    const own = task.id.slice(0, -MOW.length);
    const ids = goesBefore.map(({ id }) => id);
    const last = ids[ids.indexOf(`${own}${BALE}`) - 1];
    if (last === undefined) return task;
    const wait = { id: last, days: 1, onlyIfPlaced: true } as const;
    return { ...task, waits: [...task.waits, wait] };
  };

function eventsOf(
  { turnOut, arrivals, calvings }: HerdDates,
  { tables, farm, today }: PastureContext,
): PlanEvent[] {
  const groups = calvings.filter(({ cow }) => cow === undefined);
  // Whose calving it is has to be said only where others calve as well; of one class their days tell them apart.
  const saidOf = (classId: string, due: PlainDate): Pick<PlanEvent, 'what' | 'words'> => {
    if (calvings.length < 2) return {};
    const name = tables.cattle.classes.find(({ id }) => id === classId)!.name.toLowerCase();
    if (groups.length < 2) {
      const isOfCow = calvings.some((each) => each.cow && each.classId === classId);
      return { what: isOfCow ? 'the others' : name };
    }
    const isAlone = groups.filter((each) => each.classId === classId).length === 1;
    const what = isAlone ? name : `those due ${formatDate(due, { units: farm.units, today })}`;
    return { what, words: `${name}, calving due` };
  };
  return [
    ...(turnOut ? [{ kind: 'turn-out', date: String(turnOut.value) } as const] : []),
    ...arrivals.map(({ on, head, apartIn, out }, k): PlanEvent => ({
      kind: 'cattle-arrival',
      number: k + 1,
      date: on,
      counts: { 'ten-head': head },
      ...(apartIn === undefined ? {} : { what: apartIn }),
      // From the day after they come to the last one apart.
      ...(out === undefined || daysBetween(on, out) === tables.pasture.quarantineDays.value
        ? {}
        : { dailyDays: Math.max(1, daysBetween(on, out) - 1) }),
    })),
    ...arrivals.flatMap(({ out }, k): PlanEvent[] =>
      out === undefined ? [] : [{ kind: 'quarantine-over', number: k + 1, date: out }],
    ),
    ...calvings.map(({ classId, head, number, cow, due }): PlanEvent => ({
      kind: 'calving',
      date: String(due.value),
      classId,
      ...(cow ? { animal: cow } : { number, ...saidOf(classId, String(due.value)) }),
      counts: { 'ten-head': head },
    })),
  ];
}

/** A day on which is mown or topped, with the land of its paddocks and its hay. */
function eventOf({ paddocks, tables }: PastureContext, go: MowingGo): PlanEvent {
  const { harvestShare, dryMatterShare } = tables.pasture.hay;
  const mown = go.paddocks.map((paddock) => paddocks[paddock]!);
  const what = mown.map(({ name }) => name).join(', ');
  return {
    kind: go.kind,
    number: go.number + 1,
    date: go.date,
    what,
    ...(go.kind === 'mowing' ? { words: `hay to mow from, ${what}` } : {}),
    counts: {
      acre: mown.reduce((sum, { areaM2 }) => sum + areaM2, 0) / M2_PER_ACRE,
      ton: (go.kg * (harvestShare / dryMatterShare)) / KG_PER_TON,
    },
  };
}

/** Tasks of arrivals and calvings are numbered from 0 in their ids, by which ticks are kept. */
function ownerOf(herdId: string, { kind, number, animal }: PlanEvent): string {
  if (animal) return `cow-${animal.id}`;
  if (number === undefined) return herdId;
  if (kind === 'mowing' || kind === 'topping')
    return `${herdId}.${goOf({ kind, number: number - 1 })}`;
  return `${herdId}.${kind === 'calving' ? 'c' : 'a'}${number - 1}`;
}
