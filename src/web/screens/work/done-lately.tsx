import { Button, Group, Stack, Text } from '@mantine/core';
import type { WorkPlan } from '../../../../shared/plan/work/work-plan.js';
import type { SavedFarm } from '../../api/queries.js';
import { useMark } from '../../api/work-queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { Failure } from '../../shell/states.js';

/** What was ticked off in the last days, to be opened again. */
export function DoneLately({ plan, farm }: { plan: WorkPlan; farm: SavedFarm }) {
  const sayDate = useSayDate();
  const mark = useMark(farm.id);
  return (
    <Stack gap="xs">
      {plan.done.map(({ key, name, on }) => (
        <Group key={key} justify="space-between" gap="xs">
          <Text size="sm">
            {name}, {sayDate(on)}
          </Text>
          <Button
            variant="default"
            disabled={mark.isPending}
            onClick={() => mark.mutate({ key })}
            aria-label={`Undo: ${name}`}
          >
            Undo
          </Button>
        </Group>
      ))}
      <Failure error={mark.error} />
    </Stack>
  );
}
