import { useState } from 'react';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { storyPartOf, type StoryPart } from '../../../../shared/plan/story/story-part.js';
import { taskHours } from '../../../../shared/plan/tasks/task-hours.js';
import { isPastItsDay, type Task } from '../../../../shared/plan/tasks/task.js';
import { formatHours } from '../../../../shared/units/format.js';
import { inOrderOfDays, TaskDayWords, useAsTrips, useTaskDay } from '../../tick/fitted-tasks.js';
import { TaskMark } from '../../tick/task-mark.js';
import { TaskBadge, TaskFacts } from './task-card.js';
import { More } from './story-section.js';
import type { AskedBatch } from './use-plan.js';

/** Pieces of work that stand in a part at once. */
const FEW = 4;

interface Props {
  readonly plan: BatchPlan;
  readonly asked: AskedBatch;
  readonly part: StoryPart;
  /** Work of a batch that is not saved yet cannot be ticked. */
  readonly isSaved: boolean;
}

/** What is to do for a part of the story: the next few, and the others behind a touch. */
export function StoryTasks({ plan, asked, part, isSaved }: Props) {
  const all = inOrderOfDays(
    useAsTrips(asked.picture.progress)(
      plan.tasks.tasks.filter((task) => storyPartOf(task, plan) === part),
    ),
    useTaskDay('batch'),
  );
  const open = all.filter(({ isOver }) => isOver !== true);
  const past = all.filter((task) => task.isOver === true && !isMoot(task, plan, asked));
  return (
    <>
      <TaskList tasks={open} asked={asked} isSaved={isSaved} />
      {0 < past.length && (
        <More title={`${past.length} of before`}>
          <Tasks tasks={past} asked={asked} isSaved={isSaved} />
        </More>
      )}
    </>
  );
}

/**
 * Whether nobody needs to read of some work of before: the birds are here, however they came, and what
 * was to be done until then was not told as done.
 */
const isMoot = (
  { id, start }: Task,
  { birds, arrivalDate }: BatchPlan,
  { batch, picture }: AskedBatch,
): boolean =>
  birds.counted !== undefined &&
  start < arrivalDate &&
  !picture.progress.some(({ key }) => key === `batch/${batch.id}/${id}`);

interface ListProps extends Pick<Props, 'asked' | 'isSaved'> {
  readonly tasks: readonly Task[];
}

/** The first few of some tasks, and the others behind a touch. */
export function TaskList({ tasks, ...rest }: ListProps) {
  const others = tasks.slice(FEW);
  return (
    <>
      {0 < tasks.length && <Tasks tasks={tasks.slice(0, FEW)} {...rest} />}
      {0 < others.length && (
        <More title={`${others.length} more to do, ${hoursOf(others)}`}>
          <Tasks tasks={others} {...rest} />
        </More>
      )}
    </>
  );
}

const Tasks = ({ tasks, asked, isSaved }: ListProps) => (
  <ul className="story-tasks">
    {tasks.map((task) => (
      <li key={task.id}>
        <StoryTask task={task} asked={asked} isSaved={isSaved} />
      </li>
    ))}
  </ul>
);

const hoursOf = (tasks: readonly Task[]): string =>
  formatHours(tasks.reduce((sum, { hours }) => sum + hours, 0));

function StoryTask({ task, asked, isSaved }: { task: Task } & Pick<Props, 'asked' | 'isSaved'>) {
  const dayOf = useTaskDay('batch');
  const [isOpen, setOpen] = useState(false);
  const { today, progress } = asked.picture;
  const day = dayOf(task);
  // Where the plan of the work found time before its last day, it is not late.
  const isLate = day.isFitted ? day.dueBy < today : isPastItsDay(task, today);
  const { units } = asked.farm;
  const told = progress.find(({ key }) => key === `batch/${asked.batch.id}/${task.id}`);
  const word = told?.doneOn !== undefined ? 'Done' : told?.struckOut ? 'Struck out' : undefined;
  return (
    <details className="story-task" onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary>
        <span className="story-task-name">{task.name}</span>
        <span className="story-task-when">
          {word ?? <TaskDayWords {...day} />}
          {word === undefined && isLate && !isOpen && <b> · already late</b>}
        </span>
        <span className="story-task-hours">{formatHours(taskHours(task, asked.tables).value)}</span>
      </summary>
      {isOpen && (
        <div className="story-inside">
          {word === undefined && (
            <TaskBadge task={task} isLate={isLate} spareDays={day.spareDays} />
          )}
          <TaskFacts kind="batch" task={task} tables={asked.tables} isDated={false} />
          {isSaved && <TaskMark task={task} marks={{ kind: 'batch', units, today, progress }} />}
        </div>
      )}
    </details>
  );
}
