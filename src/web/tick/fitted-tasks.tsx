import './tick.css';
import { createContext, useContext, useMemo, type ReactNode } from 'react';
import { addDays, type PlainDate } from '../../../shared/calendar/plain-date.js';
import type { Progress } from '../../../shared/farm/job.js';
import { FETCHES } from '../../../shared/plan/tasks/fetches.js';
import type { Task } from '../../../shared/plan/tasks/task.js';
import {
  fittedDays,
  type FittedDay,
  type FittedDays,
} from '../../../shared/plan/work/fitted-days.js';
import { useWork } from '../api/work-queries.js';
import { useSayDate } from '../explain/say-date.js';

/** The days that the plan of the work found; while it is asked for nobody knows them. */
type Known =
  | {
      readonly days: FittedDays;
      /** What all of its work is called, that without a day too. */
      readonly names: ReadonlyMap<string, string>;
      readonly today: PlainDate;
    }
  | 'waiting'
  | 'none';

const Fitted = createContext<Known>('none');

interface Props {
  readonly farmId: string;
  /** What is not saved has no day in the plan of the work. */
  readonly isSaved: boolean;
  readonly children: ReactNode;
}

/** Lets the tasks within it stand on the days on which the household has the time for them. */
export function FittedTasksOf({ farmId, isSaved, children }: Props) {
  const { data, isPending } = useWork(farmId, isSaved);
  const known = useMemo<Known>(() => {
    if (!isSaved) return 'none';
    if (data) {
      const names = new Map(data.jobs.map(({ key, name }) => [key, name]));
      return { days: fittedDays(data), names, today: data.today };
    }
    return isPending ? 'waiting' : 'none';
  }, [data, isPending, isSaved]);
  return <Fitted.Provider value={known}>{children}</Fitted.Provider>;
}

/** The days of a task to act on. */
export interface TaskDay extends FittedDay {
  /** It stands where there is time for it; else it is counted back from its event. */
  readonly isFitted: boolean;
  /** Nobody knows yet: the place of its date is kept. */
  readonly isWaiting: boolean;
}

/** Where tasks of a batch or herd stand: fitted where the plan of the work reaches. */
export function useTaskDay(kind: 'batch' | 'herd'): (task: Task) => TaskDay {
  const known = useContext(Fitted);
  return (task) => {
    const key = `${kind}/${task.belongsToId}/${task.id}`;
    const fitted = typeof known === 'string' ? undefined : known.days.get(key);
    const counted = {
      name: task.name,
      on: task.start,
      ...(task.end === task.start ? {} : { until: task.end }),
      dueBy: task.alreadyLate || task.isOver ? task.start : task.latestStart,
      spareDays: task.spareDays,
    };
    return {
      ...(fitted ?? counted),
      isFitted: fitted !== undefined,
      isWaiting: known === 'waiting',
    };
  };
}

/** A year is planned of trips for feed. */
const TRIP_DAYS = 365;

/**
 * Tasks as the plan of the work has them: feed is fetched on trips for all that eat of it, each of
 * which stands with one batch only. What no trip is left for was brought on another one, or is not
 * needed: a day of its own that is past does not make it late.
 */
export function useAsTrips(
  progress: readonly Progress[],
): (tasks: readonly Task[]) => readonly Task[] {
  const known = useContext(Fitted);
  return (tasks) => {
    if (typeof known === 'string') return tasks;
    const end = addDays(known.today, TRIP_DAYS);
    return tasks.flatMap((task) => {
      const key = `batch/${task.belongsToId}/${task.id}`;
      const isOver =
        task.isOver === true || progress.some((mark) => mark.key === key && isOff(mark));
      if (!FETCHES.has(task.templateId) || isOver) return [task];
      const name = known.days.get(key)?.name ?? known.names.get(key);
      if (name !== undefined) return [{ ...task, name }];
      return task.start < end ? [] : [task];
    });
  };
}

const isOff = ({ doneOn, struckOut }: Progress): boolean =>
  doneOn !== undefined || struckOut === true;

/** Tasks by the days on which they stand. */
export const inOrderOfDays = (
  tasks: readonly Task[],
  dayOf: (task: Task) => FittedDay,
): readonly Task[] => [...tasks].sort((a, b) => dayOf(a).on.localeCompare(dayOf(b).on));

/** A day in words: “planned for Sun, Mar 8, due by Thu, Mar 12”. */
export function TaskDayWords({ on, until, dueBy, isFitted, isWaiting }: TaskDay) {
  const sayDate = useSayDate();
  return (
    <span className={isWaiting ? 'is-waiting' : undefined}>
      {isFitted && 'planned for '}
      {sayDate(on)}
      {until !== undefined && ` to ${sayDate(until)}`}
      {(until ?? on) < dueBy && `, due by ${sayDate(dueBy)}`}
    </span>
  );
}
