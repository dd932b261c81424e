import { Button } from '@mantine/core';
import { useState } from 'react';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { storyPartOf, type StoryPart } from '../../../../shared/plan/story/story-part.js';
import { taskHours } from '../../../../shared/plan/tasks/task-hours.js';
import type { Task } from '../../../../shared/plan/tasks/task.js';
import { formatHours } from '../../../../shared/units/format.js';
import { useMark } from '../../api/work-queries.js';
import { useOpener } from '../../explain/explain-panel.js';
import { useSayDate } from '../../explain/say-date.js';
import { Failure } from '../../shell/states.js';
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
  const all = plan.tasks.tasks.filter((task) => storyPartOf(task, plan) === part);
  const open = all.filter(({ isOver }) => isOver !== true);
  const past = all.filter(({ isOver }) => isOver === true);
  const list = (tasks: readonly Task[]) => (
    <ul className="story-tasks">
      {tasks.map((task) => (
        <li key={task.id}>
          <StoryTask task={task} asked={asked} isSaved={isSaved} />
        </li>
      ))}
    </ul>
  );
  const rest = open.slice(FEW);
  return (
    <>
      {0 < open.length && list(open.slice(0, FEW))}
      {0 < rest.length && (
        <More title={`${rest.length} more to do, ${hoursOf(rest)}`}>{list(rest)}</More>
      )}
      {0 < past.length && <More title={`${past.length} of before`}>{list(past)}</More>}
    </>
  );
}

const hoursOf = (tasks: readonly Task[]): string =>
  formatHours(tasks.reduce((sum, { hours }) => sum + hours, 0));

function StoryTask({ task, asked, isSaved }: { task: Task } & Pick<Props, 'asked' | 'isSaved'>) {
  const sayDate = useSayDate();
  const [isOpen, setOpen] = useState(false);
  const key = `batch/${asked.batch.id}/${task.id}`;
  const done = asked.picture.progress.find((mark) => mark.key === key)?.doneOn;
  return (
    <details className="story-task" onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary>
        <span className="story-task-name">{task.name}</span>
        <span className="story-task-when">
          {done === undefined ? sayDate(task.start) : 'Done'}
          {done === undefined && task.alreadyLate && <b> · already late</b>}
        </span>
        <span className="story-task-hours">{formatHours(taskHours(task, asked.tables).value)}</span>
      </summary>
      {isOpen && (
        <div className="story-inside">
          <TaskBadge task={task} />
          <TaskFacts task={task} tables={asked.tables} />
          {isSaved && <Tick farmId={asked.farm.id} workKey={key} name={task.name} done={done} />}
        </div>
      )}
    </details>
  );
}

/** Ticks a piece of work off, and takes that back. */
function Tick({
  farmId,
  workKey,
  name,
  done,
}: {
  farmId: string;
  workKey: string;
  name: string;
  done: string | undefined;
}) {
  const mark = useMark(farmId);
  const { reader } = useOpener();
  return (
    <>
      <Failure error={mark.error} />
      <Button
        mt="xs"
        variant={done === undefined ? 'light' : 'default'}
        loading={mark.isPending}
        aria-label={`${done === undefined ? 'Done' : 'Undo'}: ${name}`}
        onClick={() =>
          mark.mutate(
            done === undefined ? { key: workKey, doneOn: reader.today! } : { key: workKey },
          )
        }
      >
        {done === undefined ? 'Done' : 'Undo'}
      </Button>
    </>
  );
}
