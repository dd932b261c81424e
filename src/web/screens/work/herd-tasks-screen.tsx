import { Button, Stack, Text, Title } from '@mantine/core';
import { Link } from 'wouter';
import type { Task } from '../../../../shared/plan/tasks/task.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { usePicture, type SavedFarm } from '../../api/queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { Empty } from '../../shell/empty.js';
import { Folded } from '../../shell/folded.js';
import { useAll, Working } from '../../shell/states.js';
import { TaskCard } from '../batch/task-card.js';
import { usePasturePlan } from '../pasture/use-pasture.js';
import { FittedTasksOf, inOrderOfDays, useTaskDay } from '../../tick/fitted-tasks.js';
import type { TaskMarks } from '../../tick/task-mark.js';
import { WorkMarksOf } from '../../tick/work-marks.js';
import { WorkNav } from './work-nav.js';

/** Tasks tied to turn-out, arrivals and calving. */
export default function HerdTasksScreen({ farm, tables }: { farm: SavedFarm; tables: Tables }) {
  const all = useAll(usePicture(farm.id));
  const picture = 'waiting' in all ? undefined : all.data[0];
  const { plan, isWorking } = usePasturePlan(picture, tables);
  if ('waiting' in all) return all.waiting;
  const { today, progress, herds } = all.data[0];
  const marks = { kind: 'herd', units: farm.units, today, progress } as const;
  return (
    <Stack maw={800}>
      <Title order={1}>Herd tasks</Title>
      <WorkNav farmId={farm.id} />
      {!plan && isWorking && <Working label="Planning the season" />}
      {herds.length === 0 && (
        <Empty text="No cattle yet. Add a herd, and what it asks for through the year stands here.">
          <Button component={Link} href={`/farm/${farm.id}/pasture/land`}>
            Paddocks and herds
          </Button>
        </Empty>
      )}
      {plan && (
        <Text>
          {plan.tasks.length} tasks, counted back and on from turn-out, arrivals and calving. Days
          to spare are how many days a start can slip before something that waits for it is late.
          Hours are estimates.
        </Text>
      )}
      <WorkMarksOf farmId={farm.id}>
        <FittedTasksOf farmId={farm.id} isSaved>
          {plan && <HerdTasks tasks={plan.tasks} tables={tables} marks={marks} />}
        </FittedTasksOf>
      </WorkMarksOf>
    </Stack>
  );
}

/** Tasks that stand at once: the next ones. */
const NEXT = 6;

/** The next tasks by the days on which they stand; later ones and what is past a touch away. */
function HerdTasks({
  tasks,
  tables,
  marks,
}: {
  tasks: readonly Task[];
  tables: Tables;
  marks: TaskMarks;
}) {
  const sayDate = useSayDate();
  const dayOf = useTaskDay('herd');
  const inOrder = inOrderOfDays(tasks, dayOf);
  const open = inOrder.filter(({ isOver }) => isOver !== true);
  const past = inOrder.filter(({ isOver }) => isOver === true);
  const later = open.slice(NEXT);
  const cardsOf = (some: readonly Task[], level: 2 | 3) =>
    some.map((task) => (
      <TaskCard key={task.id} task={task} tables={tables} marks={marks} level={level} />
    ));
  return (
    <>
      {cardsOf(open.slice(0, NEXT), 2)}
      {later[0] && (
        <Folded
          id="later-tasks"
          title={`${later.length} later`}
          answer={`From ${sayDate(dayOf(later[0]).on)}: ${later.map(({ name }) => name).join('; ')}`}
        >
          <Stack>{cardsOf(later, 3)}</Stack>
        </Folded>
      )}
      {0 < past.length && (
        <Folded id="past-tasks" title={`${past.length} of before`}>
          <Stack>{cardsOf(past, 3)}</Stack>
        </Folded>
      )}
    </>
  );
}
