import { Badge, Button, Card, Group, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import { moveQuantities, type Move } from '../../../../shared/plan/pasture/moves.js';
import type { PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import { formatShortDate, formatValue, type Reader } from '../../../../shared/units/format.js';
import { useMoved } from '../../api/pasture-queries.js';
import { Fact, Facts } from '../../explain/number.js';
import { Failure } from '../../shell/states.js';
import { herdName, paddockName } from './season-strip.js';

const FIRST = 8;

/** The dated moves. Each opens to its numbers; today's can be noted as done. */
export function MoveList({
  plan,
  farmId,
  reader,
}: {
  plan: PasturePlan;
  farmId: string;
  reader: Reader;
}) {
  const [isAll, setAll] = useState(false);
  const [open, setOpen] = useState<string>();
  const moved = useMoved(farmId);
  if (plan.moves.length === 0) return <Text>No herd goes on grass in this plan.</Text>;
  const shown = isAll ? plan.moves : plan.moves.slice(0, FIRST);
  return (
    <Stack gap="xs">
      <Failure error={moved.error} />
      {shown.map((move) => {
        const key = `${move.herdId}/${move.from}`;
        return (
          <Card key={key} withBorder p="sm">
            <Group justify="space-between" gap="xs">
              <Text fw={600}>
                {formatShortDate(move.from)}: {herdName(plan, move.herdId)} into{' '}
                {paddockName(plan, move.paddockId)}
              </Text>
              <Group gap="xs">
                <Flags move={move} />
                {move.from <= plan.today && (
                  <Button
                    size="compact-md"
                    loading={moved.isPending}
                    onClick={() =>
                      moved.mutate({
                        herdId: move.herdId,
                        paddockId: move.paddockId,
                        on: plan.today,
                      })
                    }
                  >
                    They are in
                  </Button>
                )}
              </Group>
            </Group>
            <Text size="sm">
              {move.days === 1 ? '1 day' : `${move.days} days`}, in at{' '}
              {formatValue(move.heightBeforeCm, 'cm', reader)}, leave at{' '}
              {formatValue(move.heightAfterCm, 'cm', reader)}
              {move.restDays === undefined ? '' : `, after ${move.restDays} days of rest`}
            </Text>
            <Button
              variant="subtle"
              size="compact-md"
              w="fit-content"
              aria-expanded={open === key}
              onClick={() => setOpen(open === key ? undefined : key)}
            >
              {open === key ? 'Less' : 'Numbers of this stay'}
            </Button>
            {open === key && (
              <Facts>
                {moveQuantities(plan, move).map((q) => (
                  <Fact key={q.label} of={q} />
                ))}
              </Facts>
            )}
          </Card>
        );
      })}
      {FIRST < plan.moves.length && (
        <Button variant="default" onClick={() => setAll(!isAll)}>
          {isAll ? 'Fewer' : `All ${plan.moves.length} stays`}
        </Button>
      )}
    </Stack>
  );
}

function Flags({ move }: { move: Move }) {
  return (
    <>
      {move.isEarly && (
        <Badge color="orange.9" c="bright" variant="outline" tt="none">
          below its height
        </Badge>
      )}
      {move.isRank && (
        <Badge color="orange.9" c="bright" variant="outline" tt="none">
          rank
        </Badge>
      )}
      {0.5 < move.hayKg && (
        <Badge color="red.9" c="bright" variant="outline" tt="none">
          hay beside
        </Badge>
      )}
    </>
  );
}
