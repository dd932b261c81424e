import { Button, Group, Text } from '@mantine/core';
import type { WorkPlan } from '../../../../shared/plan/work/planned-work.js';
import type { SavedFarm } from '../../api/queries.js';
import { useLook } from '../../api/mark-queries.js';
import { Failure } from '../../shell/states.js';

/** Says what was found when the ground was looked at; the reckoning goes on from there. */
export function GroundLookButtons({ plan, farm }: { plan: WorkPlan; farm: SavedFarm }) {
  const look = useLook(farm.id);
  const answer = (isWorkable?: boolean) =>
    look.mutate({ date: plan.today, ...(isWorkable === undefined ? {} : { isWorkable }) });
  if (plan.groundToday !== undefined) {
    return (
      <Group gap="xs" mt={4} className="no-print">
        <Text size="sm">
          You found the ground {plan.groundToday ? 'dry enough to work' : 'too wet'} today.
        </Text>
        <Button variant="default" size="compact-md" onClick={() => answer()}>
          Undo
        </Button>
        <Failure error={look.error} />
      </Group>
    );
  }
  return (
    <Group gap="xs" mt={4} className="no-print">
      <Text size="sm">How is the ground?</Text>
      <Button variant="default" size="compact-md" onClick={() => answer(true)}>
        Dry enough
      </Button>
      <Button variant="default" size="compact-md" onClick={() => answer(false)}>
        Too wet
      </Button>
      <Failure error={look.error} />
    </Group>
  );
}
