import { Button, Stack, Text } from '@mantine/core';
import { useChoose } from '../../api/pasture-queries.js';
import type { SavedFarm } from '../../api/queries.js';
import type { PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import type { PastureChoices } from '../../../../shared/farm/pasture-choices.js';
import { paddockName } from './season-strip.js';

/** Whether paddocks are shut in late summer, so that their grass stands when growth is over. */
export function AutumnGrass({
  plan,
  farm,
  choices,
}: {
  plan: PasturePlan;
  farm: SavedFarm;
  choices: PastureChoices;
}) {
  const choose = useChoose(farm);
  const { stockpile } = plan.keyDates;
  if (!stockpile) return null;
  const { isKept, paddockIds } = stockpile;
  const names = paddockIds.map((id) => paddockName(plan, id)).join(', ');
  const { keepForAutumnIds: _kept, ...others } = choices;
  const wanted = isKept ? others : { ...others, keepForAutumnIds: [...paddockIds] };
  return (
    <Stack gap={4} align="flex-start" mt="xs">
      <Text size="sm">
        {isKept
          ? `${names}: closed for fall in this plan, and grazed when growth is over.`
          : `To graze on when growth is over, keep ${names} closed from then on. The plan then spares them, and feeds more hay before if grass is short.`}
      </Text>
      <Button
        variant="light"
        loading={choose.isPending}
        onClick={() => choose.mutate({ loaded: choices, wanted })}
      >
        {isKept ? 'Graze them as the others' : 'Keep them for fall'}
      </Button>
      {choose.error && (
        <Text size="sm" c="stop" role="alert">
          {choose.error.message}
        </Text>
      )}
    </Stack>
  );
}
