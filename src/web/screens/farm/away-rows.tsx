import { Button, Group, Input, Stack } from '@mantine/core';
import type { ReactNode } from 'react';
import { awayFields, personFields, type Away } from '../../../../shared/farm/farm.js';
import { DateField } from '../../fields/date-input.js';

const { from: FROM, to: TO } = awayFields.fields;

/** The days somebody is away, a row for each absence. */
export function AwayRows({
  away,
  errorAt,
  onChange,
}: {
  away: readonly Away[];
  errorAt: (field: string) => ReactNode;
  onChange: (away: Away[]) => void;
}) {
  const put = (k: number, part: Partial<Away>): void =>
    onChange(away.map((each, i) => (i === k ? { ...each, ...part } : each)));
  return (
    <Input.Wrapper
      label={personFields.fields.away.label}
      error={errorAt('away')}
      component="fieldset"
      className="plain-fieldset"
    >
      <Stack gap="xs" align="flex-start">
        {away.map(({ from, to }, k) => (
          <Group key={k} gap="xs" align="end">
            <DateField
              label={FROM.label}
              value={from}
              error={errorAt(`away.${k}.from`)}
              onChange={(date) => put(k, { from: date ?? '' })}
            />
            <DateField
              label={TO.label}
              value={to}
              error={errorAt(`away.${k}.to`)}
              onChange={(date) => put(k, { to: date ?? '' })}
            />
            <Button
              variant="subtle"
              aria-label={`Remove absence ${k + 1}`}
              onClick={() => onChange(away.filter((_, i) => i !== k))}
            >
              Remove
            </Button>
          </Group>
        ))}
        <Button variant="default" onClick={() => onChange([...away, { from: '', to: '' }])}>
          Add an absence
        </Button>
      </Stack>
    </Input.Wrapper>
  );
}
