import { Button, Group, Text } from '@mantine/core';
import type { ReactNode } from 'react';
import type { Person } from '../../../../shared/farm/farm.js';
import type { Absence } from '../../../../shared/farm/absences.js';
import { useSayDate } from '../../explain/say-date.js';

/** An absence that has no sheet yet, and what can be done about it. */
export function AbsenceLine({
  absence: { from, to, awayIds, illIds, stayIds },
  people,
  action,
  onPress,
  children,
}: {
  absence: Absence;
  people: readonly Person[];
  action: string;
  onPress: () => void;
  children?: ReactNode;
}) {
  const sayDate = useSayDate();
  const named = (ids: readonly string[]): string =>
    people
      .filter(({ id }) => ids.includes(id))
      .map(({ name }) => name)
      .join(' and ');
  const gone = awayIds.filter((id) => !illIds.includes(id));
  const days = from === to ? sayDate(from) : `${sayDate(from)} to ${sayDate(to)}`;
  return (
    <Group justify="space-between" gap="xs" mb="sm">
      <Text flex="1 1 16rem">
        {[
          ...(0 < gone.length ? [`${named(gone)} away`] : []),
          ...(0 < illIds.length ? [`${named(illIds)} ill`] : []),
        ].join(', ')}
        , {days}:{' '}
        {stayIds.length === 0 ? (
          <b>
            {gone.length === 0 ? 'nobody can do the work' : 'nobody is there'}, and there is no
            sheet yet.
          </b>
        ) : (
          `${named(stayIds)} ${stayIds.length === 1 ? 'stays' : 'stay'}; a sheet is of use if somebody helps.`
        )}
      </Text>
      <Group gap="xs">
        <Button
          variant={stayIds.length === 0 ? 'filled' : 'default'}
          aria-label={`${action}: ${days}`}
          onClick={onPress}
        >
          {action}
        </Button>
        {children}
      </Group>
    </Group>
  );
}
