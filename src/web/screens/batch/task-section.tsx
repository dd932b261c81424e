import { Alert, Badge, Card, Group, Stack, Text, Title } from '@mantine/core';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import type { Quantity } from '../../../../shared/explain/quantity.js';
import { taskHours, type PlannedTask } from '../../../../shared/plan/tasks.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatDate, formatNearDate, formatShortDate } from '../../../../shared/units/format.js';
import { Num } from '../../explain/number.js';

export function TaskSection({ plan, tables }: { plan: BatchPlan; tables: Tables }) {
  const { tasks } = plan;
  const { changes } = tasks;
  const nowLate = changes?.filter((c) => c.nowLate) ?? [];
  return (
    <Stack>
      {changes && 0 < changes.length && (
        <Alert color="blue" title={`${changes.length} tasks moved with the arrival`}>
          {0 < nowLate.length && (
            <Text fw={600} c="bright">
              Already late now: {nowLate.map((c) => c.name).join('; ')}.
            </Text>
          )}
          {changes.slice(0, 12).map((c) => (
            <Text key={c.id} size="sm" c="bright">
              {c.name}: {formatShortDate(c.before)} → {formatShortDate(c.after)}
            </Text>
          ))}
          {12 < changes.length && (
            <Text size="sm" c="bright">
              … and {changes.length - 12} more.
            </Text>
          )}
        </Alert>
      )}
      <Text>
        {tasks.tasks.length} tasks, <Num of={tasks.hoursInAll} /> in all
        {0 < tasks.late ? `, ${tasks.late} already late` : ''}. Most hours are estimates.
      </Text>
      <Text size="sm">
        Slack: how many days a task can start late before later work has to wait.
      </Text>
      {tasks.tasks.map((task) => (
        <TaskCard
          key={task.id}
          task={task}
          today={plan.today}
          hours={taskHours(task, tables.taskTemplates, plan.birds.placed.value)}
        />
      ))}
    </Stack>
  );
}

function TaskCard({ task, today, hours }: { task: PlannedTask; today: string; hours: Quantity }) {
  return (
    <Card withBorder padding="sm" component="article" className="avoid-break">
      <Group justify="space-between" align="start" wrap="nowrap">
        <Title order={3} size="h4">
          {task.name}
        </Title>
        {task.alreadyLate ? (
          <Badge color="red.9" size="lg" className="whole-badge">
            already late
          </Badge>
        ) : (
          <Badge
            color={task.slackDays === 0 ? 'orange.9' : 'gray.7'}
            c="bright"
            variant="outline"
            size="lg"
            tt="none"
            className="whole-badge"
          >
            {task.slackDays === 0
              ? 'no slack'
              : `slack ${task.slackDays} ${task.slackDays === 1 ? 'day' : 'days'}`}
          </Badge>
        )}
      </Group>
      <Text>
        {formatDate(task.start)}
        {task.end !== task.start && ` to ${formatDate(task.end)}`} · <Num of={hours} />
        {0 < task.slackDays &&
          !task.alreadyLate &&
          ` · start at the latest ${formatNearDate(task.latestStart, today)}`}
      </Text>
      {task.needs && <Text size="sm">Needs: {task.needs}</Text>}
      {0 < task.waitsFor.length && <Text size="sm">Waits for: {task.waitsFor.join('; ')}</Text>}
      {task.leadNote && <Text size="sm">Not later, because {task.leadNote}.</Text>}
      <Text size="sm">If late: {task.ifLate}</Text>
    </Card>
  );
}
