import { daysBetween, type PlainDate } from '../../../shared/calendar/plain-date.js';
import type { Progress } from '../../../shared/farm/job.js';
import type { Task } from '../../../shared/plan/tasks/task.js';
import type { UnitSystem } from '../../../shared/units/unit.js';
import { DayJob } from './day-job.js';
import { useTaskDay } from './fitted-tasks.js';

/** What the control of a task needs of its farm. */
export interface TaskMarks {
  readonly kind: 'batch' | 'herd';
  readonly units: UnitSystem;
  readonly today: PlainDate;
  readonly progress: readonly Progress[];
}

/** The control of a task of a batch or herd, where it stands among its own: months ahead as well. */
export function TaskMark({ task, marks }: { task: Task; marks: TaskMarks }) {
  const { kind, units, today, progress } = marks;
  const { buys } = useTaskDay(kind)(task);
  if (task.belongsToId === undefined) return null;
  const key = `${kind}/${task.belongsToId}/${task.id}`;
  const { doneOn, struckOut, hoursDone, ownHours, dueOn } =
    progress.find((each) => each.key === key) ?? {};
  const state = doneOn !== undefined ? 'done' : struckOut ? 'struck-out' : undefined;
  const people = task.conditions?.peopleNeeded ?? 1;
  const days = task.isDaily ? daysBetween(task.start, task.end) + 1 : 1;
  return (
    <DayJob
      work={{
        key,
        name: task.name,
        hours: (ownHours ?? task.hours / people / days) - (hoursDone ?? 0),
        due: dueOn ?? task.end,
        planned: task.start,
        buys,
        ...(hoursDone === undefined ? {} : { hoursDone }),
        ...(state === undefined ? {} : { state }),
      }}
      units={units}
      today={today}
    />
  );
}
