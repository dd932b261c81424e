import './fields.css';
import { Button, Group, Input, Stack } from '@mantine/core';
import { DateField } from './date-input.js';

/** Some dates, each by the platform's own picker. */
export function DateList({
  label,
  dates,
  errorAt,
  onChange,
}: {
  label: string;
  dates: readonly string[];
  /** What is wrong with the k-th date, or with all of them where no k is given. */
  errorAt: (k?: number) => string | undefined;
  onChange: (dates: string[]) => void;
}) {
  return (
    <Input.Wrapper
      label={label}
      error={errorAt()}
      component="fieldset"
      className="plain-fieldset"
      mt="md"
    >
      <Stack gap="xs" align="flex-start">
        {dates.map((date, k) => (
          <Group key={k} gap="xs">
            <DateField
              aria-label={`${label}: ${k + 1}`}
              value={date}
              error={errorAt(k)}
              onChange={(value) =>
                onChange(dates.map((each, i) => (i === k ? (value ?? '') : each)))
              }
            />
            <Button
              variant="subtle"
              aria-label={`Remove date ${k + 1}`}
              onClick={() => onChange(dates.filter((_, i) => i !== k))}
            >
              Remove
            </Button>
          </Group>
        ))}
        <Button variant="default" onClick={() => onChange([...dates, ''])}>
          Add a date
        </Button>
      </Stack>
    </Input.Wrapper>
  );
}
