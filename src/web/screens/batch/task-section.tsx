import { Alert, Stack, Text } from '@mantine/core';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import type { FarmPicture } from '../../../../shared/farm/picture.js';
import { WorkMarksOf } from '../../tick/work-marks.js';
import { TaskCard } from './task-card.js';

export function TaskSection({
  plan,
  tables,
  picture,
  farmId,
}: {
  plan: BatchPlan;
  tables: Tables;
  picture: FarmPicture;
  farmId: string;
}) {
  const sayDate = useSayDate();
  const { today, progress, farm } = picture;
  const marks = { kind: 'batch', units: farm.units, today, progress } as const;
  const { tasks } = plan;
  const { changes } = tasks;
  const nowLate = changes?.filter((c) => c.nowLate) ?? [];
  return (
    <Stack>
      {changes && 0 < changes.length && (
        <Alert color="accent" title={`${changes.length} tasks moved with the arrival`}>
          {0 < nowLate.length && (
            <Text fw={600} c="bright">
              Already late now: {nowLate.map((c) => c.name).join('; ')}.
            </Text>
          )}
          {changes.slice(0, 12).map((c) => (
            <Text key={c.id} size="sm" c="bright">
              {c.name}: {sayDate(c.before)} → {sayDate(c.after)}
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
        Days to spare: how many days a task can start late before later work has to wait.
      </Text>
      <WorkMarksOf farmId={farmId}>
        {tasks.tasks.map((task) => (
          <TaskCard key={task.id} task={task} tables={tables} marks={marks} level={3} />
        ))}
      </WorkMarksOf>
    </Stack>
  );
}
