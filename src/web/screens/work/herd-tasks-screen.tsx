import { Stack, Text, Title } from '@mantine/core';
import type { Tables } from '../../../../shared/tables/tables.js';
import { usePicture, type SavedFarm } from '../../api/queries.js';
import { useAll, Working } from '../../shell/states.js';
import { TaskCard } from '../batch/task-card.js';
import { usePasturePlan } from '../pasture/use-pasture.js';
import { FittedTasksOf } from '../../tick/fitted-tasks.js';
import { WorkMarksOf } from '../../tick/work-marks.js';
import { WorkNav } from './work-nav.js';

/** Tasks tied to turn-out, arrivals and calving. */
export default function HerdTasksScreen({ farm, tables }: { farm: SavedFarm; tables: Tables }) {
  const all = useAll(usePicture(farm.id));
  const picture = 'waiting' in all ? undefined : all.data[0];
  const { plan, isWorking } = usePasturePlan(picture, tables);
  if ('waiting' in all) return all.waiting;
  const { today, progress } = all.data[0];
  const marks = { kind: 'herd', units: farm.units, today, progress } as const;
  return (
    <Stack maw={800}>
      <Title order={1}>Herd tasks</Title>
      <WorkNav farmId={farm.id} />
      {!plan && isWorking && <Working label="Planning the season" />}
      {plan && (
        <Text>
          {plan.tasks.length} tasks, counted back and on from turn-out, arrivals and calving. Days
          to spare are how many days a start can slip before something that waits for it is late.
          Hours are estimates.
        </Text>
      )}
      <WorkMarksOf farmId={farm.id}>
        <FittedTasksOf farmId={farm.id} isSaved>
          {plan?.tasks.map((task) => (
            <TaskCard key={task.id} task={task} tables={tables} marks={marks} level={2} />
          ))}
        </FittedTasksOf>
      </WorkMarksOf>
    </Stack>
  );
}
