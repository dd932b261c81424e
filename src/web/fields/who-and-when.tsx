import { Checkbox, Group } from '@mantine/core';
import type { ReactNode } from 'react';
import type { PlainDate } from '../../../shared/calendar/plain-date.js';
import { DateField } from './date-input.js';

interface Days {
  readonly from?: PlainDate | undefined;
  readonly to?: PlainDate | undefined;
}

/** Who is away, and from when to when. */
export function WhoAndWhen({
  people,
  awayIds,
  days,
  ends = ['from', 'to'],
  labels,
  errorAt,
  onAway,
  onDays,
}: {
  readonly people: readonly { readonly id: string; readonly name: string }[];
  readonly awayIds: readonly string[];
  readonly days: Days;
  /** Which ends are asked for; both, where it does not begin today. */
  readonly ends?: readonly ('from' | 'to')[];
  readonly labels: { readonly who: string; readonly from: string; readonly to: string };
  readonly errorAt: (field: 'awayIds' | 'from' | 'to') => ReactNode;
  readonly onAway: (awayIds: string[]) => void;
  readonly onDays: (days: Days) => void;
}) {
  return (
    <>
      <Checkbox.Group
        label={labels.who}
        value={[...awayIds]}
        error={errorAt('awayIds')}
        onChange={onAway}
      >
        <Group mt="xs">
          {people.map(({ id, name }) => (
            <Checkbox key={id} value={id} label={name} />
          ))}
        </Group>
      </Checkbox.Group>
      <Group align="end">
        {ends.map((end) => (
          <DateField
            key={end}
            label={labels[end]}
            value={days[end]}
            error={errorAt(end)}
            onChange={(date) => onDays({ [end]: date })}
          />
        ))}
      </Group>
    </>
  );
}
