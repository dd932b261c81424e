import { Badge, Card, Group, Text, Title } from '@mantine/core';
import { taskHours } from '../../../../shared/plan/tasks/task-hours.js';
import { isPastItsDay, type Task } from '../../../../shared/plan/tasks/task.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { Num } from '../../explain/number.js';
import { TaskDayWords, useTaskDay } from '../../tick/fitted-tasks.js';
import { saySpare } from '../../tick/say-spare.js';
import { TaskMark, type TaskMarks } from '../../tick/task-mark.js';

interface TaskCardProps {
  readonly task: Task;
  readonly tables: Tables;
  readonly marks: TaskMarks;
  /** Level of its heading below what it stands under. */
  readonly level: 2 | 3;
}

/** One task of a batch or herd: when, how long, what it needs, what happens when it is late. */
export function TaskCard({ task, tables, marks, level }: TaskCardProps) {
  const day = useTaskDay(marks.kind)(task);
  const key = `${marks.kind}/${task.belongsToId}/${task.id}`;
  const isOver = marks.progress.some(
    (told) => told.key === key && (told.doneOn !== undefined || told.struckOut === true),
  );
  // Where the plan of the work found time before its last day, it is not late.
  const isLate = day.isFitted ? day.dueBy < marks.today : isPastItsDay(task, marks.today);
  return (
    <Card withBorder padding="sm" component="article" className="avoid-break">
      <Group justify="space-between" align="start" wrap="nowrap">
        <Title order={level} size="h4">
          {task.name}
        </Title>
        {!isOver && <TaskBadge task={task} isLate={isLate} spareDays={day.spareDays} />}
      </Group>
      <TaskFacts kind={marks.kind} task={task} tables={tables} />
      <TaskMark task={task} marks={marks} />
    </Card>
  );
}

/** When it is done and how long it takes, what it needs and waits for, what happens when it is late. */
export function TaskFacts({
  task,
  tables,
  kind,
  isDated = true,
}: Pick<TaskCardProps, 'task' | 'tables'> &
  Pick<TaskMarks, 'kind'> & {
    /** Not where its day stands beside it. */
    isDated?: boolean;
  }) {
  const dayOf = useTaskDay(kind);
  return (
    <>
      <Text>
        {isDated ? (
          <>
            <TaskDayWords {...dayOf(task)} /> ·{' '}
          </>
        ) : (
          'Takes '
        )}
        <Num of={taskHours(task, tables)} />
      </Text>
      {task.needs && <Text size="sm">Needs: {task.needs}</Text>}
      {0 < task.waitsFor.length && <Text size="sm">Waits for: {task.waitsFor.join('; ')}</Text>}
      {task.leadNote && <Text size="sm">Because {task.leadNote}.</Text>}
      <Text size="sm">
        If late: {task.ifLate}.{task.ifEarly && ` If early: ${task.ifEarly}.`}
      </Text>
    </>
  );
}

/** Whether it is past or late, and how many days it can wait. */
export function TaskBadge({
  task,
  isLate,
  spareDays,
}: Pick<TaskCardProps, 'task'> & { isLate: boolean; spareDays: number }) {
  const words = canWait(task, spareDays);
  return task.isOver ? (
    <Badge
      color="var(--ink-soft)"
      c="bright"
      variant="outline"
      size="lg"
      tt="none"
      className="whole-badge"
    >
      past
    </Badge>
  ) : isLate ? (
    <Badge color="stop" size="lg" className="whole-badge">
      already late
    </Badge>
  ) : (
    <Badge
      color={words === NONE ? 'warn' : 'var(--ink-soft)'}
      c="bright"
      variant="outline"
      size="lg"
      tt="none"
      className="whole-badge"
    >
      {words}
    </Badge>
  );
}

const NONE = 'none to spare';

function canWait({ onDemand, isDaily }: Task, spareDays: number): string {
  if (onDemand) return 'when needed';
  if (isDaily) return 'daily';
  return spareDays <= 0 ? NONE : `${saySpare(spareDays)} to spare`;
}
