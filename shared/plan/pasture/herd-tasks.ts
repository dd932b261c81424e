import { found, type Found } from '../found.js';
import type { PlanEvent } from '../tasks/event.js';
import { byStart, hangTasks, lateTasks } from '../tasks/hang-tasks.js';
import type { Task } from '../tasks/task.js';
import type { PastureContext } from './pasture-context.js';
import type { HerdDates } from './herd-dates.js';
import type { TurningPart } from './turning-points.js';

export interface HerdTasksPart {
  /** The days the tasks of each herd hang on, in the order of the herds. */
  readonly events: readonly (readonly PlanEvent[])[];
  /** Of all herds, by date. */
  readonly tasks: readonly Task[];
}

const M2_PER_ACRE = 4046.8564224;

/** Work hung on turn-out, arrivals and calvings of every herd, by date. */
export function planHerdTasks(context: PastureContext, turning: TurningPart): Found<HerdTasksPart> {
  const events = turning.herds.map(eventsOf);
  const tasks = context.herds.flatMap((herd, h): Task[] => {
    const hasMilk = herd.groups.some((group) => group.classId === 'milk-cow');
    return hangTasks(context.tables.herdTaskTemplates, events[h]!, {
      id: herd.id,
      today: context.today,
      asksFor: (template) => !template.onlyMilk || hasMilk,
      counts: {
        'ten-head': Math.max(...context.herdDays[h]!.head),
        acre: context.areaM2 / M2_PER_ACRE,
      },
      idOf: (templateId, event) => `${ownerOf(herd.id, event)}.${templateId}`,
    });
  });
  const issues = lateTasks(tasks, 'herd-tasks-late', {
    one: 'herd task is',
    many: 'herd tasks are',
  });
  return found({ events, tasks: tasks.sort(byStart) }, { issues });
}

function eventsOf({ turnOut, arrivals, calvings }: HerdDates): PlanEvent[] {
  const isParted = calvings.some(({ cow }) => cow !== undefined);
  return [
    ...(turnOut ? [{ kind: 'turn-out', date: String(turnOut.value) } as const] : []),
    ...arrivals.map((a, k): PlanEvent => ({ kind: 'cattle-arrival', number: k + 1, date: a.on })),
    ...calvings.map(({ head, number, cow, due }): PlanEvent => ({
      kind: 'calving',
      date: String(due.value),
      ...(cow ? { animal: cow } : { number }),
      ...(isParted ? { counts: { 'ten-head': head } } : {}),
    })),
  ];
}

/** Tasks of arrivals and calvings are numbered from 0 in their ids, by which ticks are kept. */
function ownerOf(herdId: string, { kind, number, animal }: PlanEvent): string {
  if (animal) return `cow-${animal.id}`;
  return number === undefined ? herdId : `${herdId}.${kind === 'calving' ? 'c' : 'a'}${number - 1}`;
}
