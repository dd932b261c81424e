import { Badge, Card, Group, Stack, Text, Title } from '@mantine/core';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatDate, formatShortDate } from '../../../../shared/units/format.js';
import { usePicture, type SavedFarm } from '../../api/queries.js';
import { Num } from '../../explain/number.js';
import { useAll, Working } from '../../shell/states.js';
import { PastureNav } from './pasture-nav.js';
import { usePasturePlan } from './use-pasture.js';

/** Work hung on turn-out, arrivals and calving. */
export default function WorkScreen({ farm, tables }: { farm: SavedFarm; tables: Tables }) {
  const all = useAll(usePicture(farm.id));
  const picture = 'waiting' in all ? undefined : all.data[0];
  const { plan, isWorking } = usePasturePlan(picture, tables);
  if ('waiting' in all) return all.waiting;
  return (
    <Stack maw={800}>
      <Title order={1}>Work with the herds</Title>
      <PastureNav farmId={farm.id} />
      {!plan && isWorking && <Working label="Planning the season" />}
      {plan && (
        <Text>
          {plan.tasks.length} pieces of work, counted back and on from turn-out, arrivals and
          calving. Slack is how many days a start can slip before something that waits is late.
          Hours are estimates.
        </Text>
      )}
      {plan?.tasks.map((task) => (
        <Card key={task.id} withBorder>
          <Group justify="space-between" gap="xs">
            <Text fw={600}>{task.name}</Text>
            <Badge
              color={task.alreadyLate ? 'red.9' : task.slackDays === 0 ? 'orange.9' : 'gray.7'}
              c="bright"
              variant="outline"
              size="lg"
              tt="none"
            >
              {task.alreadyLate
                ? 'already late'
                : task.slackDays === 0
                  ? 'no slack'
                  : `slack ${task.slackDays} d`}
            </Badge>
          </Group>
          <Text>
            {formatDate(task.start)}
            {task.end === task.start ? '' : ` to ${formatDate(task.end)}`} · <Num of={task.hours} />
            {0 < task.slackDays && ` · start at the latest ${formatShortDate(task.latestStart)}`}
          </Text>
          {task.needs && <Text size="sm">Needs: {task.needs}</Text>}
          {0 < task.waitsFor.length && <Text size="sm">Waits for: {task.waitsFor.join('; ')}</Text>}
          <Text size="sm">If late: {task.ifLate}</Text>
        </Card>
      ))}
    </Stack>
  );
}
