import { Group, TextInput } from '@mantine/core';
import type { ReactNode } from 'react';
import type { StartingHours } from '../../../../shared/farm/farm.js';

const PARTS = [
  { part: 'weekday', label: 'Begin on weekdays at' },
  { part: 'weekend', label: 'at the weekend at' },
] as const;

/** When somebody's hours for the farm begin, which decides how much daylight they hold. */
export function StartTimes({
  startH,
  usual,
  errorAt,
  onChange,
}: {
  startH: StartingHours | undefined;
  usual: StartingHours;
  errorAt: (field: string) => ReactNode;
  onChange: (startH: StartingHours) => void;
}) {
  const shown = startH ?? usual;
  return (
    <Group gap="xs" align="end">
      {PARTS.map(({ part, label }) => (
        <TextInput
          key={part}
          type="time"
          label={label}
          value={clockText(shown[part])}
          error={errorAt(`startH.${part}`)}
          onChange={(event) =>
            onChange({
              weekday: shown.weekday,
              weekend: shown.weekend,
              [part]: hoursOf(event.currentTarget.value),
            })
          }
        />
      ))}
    </Group>
  );
}

function clockText(hours: number): string {
  if (!Number.isFinite(hours)) return '';
  const minutes = Math.round(60 * hours);
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

/** NaN stands for a time that is not whole yet, so that it is never saved. */
function hoursOf(text: string): number {
  const [hours, minutes] = text.split(':').map(Number);
  return hours === undefined || minutes === undefined ? Number.NaN : hours + minutes / 60;
}
