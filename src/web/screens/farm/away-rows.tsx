import { Anchor, Button, Group, Input, Stack, Text } from '@mantine/core';
import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { personFields, type Away } from '../../../../shared/farm/farm.js';
import { useSayDate } from '../../explain/say-date.js';

/** The days somebody said to be away, to be taken back; new ones are told in their one place. */
export function AwayRows({
  farmId,
  away,
  error,
  onChange,
}: {
  farmId: string;
  away: readonly Away[];
  error: ReactNode;
  onChange: (away: Away[]) => void;
}) {
  const sayDate = useSayDate();
  return (
    <Input.Wrapper
      label={personFields.fields.away.label}
      error={error}
      component="fieldset"
      className="plain-fieldset"
    >
      <Stack gap="xs" align="flex-start">
        {away.map(({ from, to }, k) => (
          <Group key={`${from} ${to}`} gap="xs">
            <Text>{from === to ? sayDate(from) : `${sayDate(from)} to ${sayDate(to)}`}</Text>
            <Button
              variant="subtle"
              aria-label={`Remove the absence from ${sayDate(from)}`}
              onClick={() => onChange(away.filter((_, i) => i !== k))}
            >
              Remove
            </Button>
          </Group>
        ))}
        <Text size="sm">
          Going away is told under{' '}
          <Anchor component={Link} href={`/farm/${farmId}/work/away`} inherit>
            While you’re away
          </Anchor>
          .
        </Text>
      </Stack>
    </Input.Wrapper>
  );
}
