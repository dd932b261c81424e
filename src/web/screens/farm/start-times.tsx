import { Group, Text, TextInput } from '@mantine/core';
import { useState } from 'react';
import type { Person, StartingHours } from '../../../../shared/farm/farm.js';
import { useTables } from '../../api/queries.js';

const PARTS = [
  { part: 'weekday', label: 'Begin on weekdays at' },
  { part: 'weekend', label: 'at the weekend at' },
] as const;

/** When somebody's hours for the farm begin; saved as soon as a whole time stands there. */
export function StartTimes({
  person,
  onSave,
}: {
  person: Person;
  onSave: (part: Partial<Person>) => void;
}) {
  const usual = useTables().data?.work.startH;
  const [typed, setTyped] = useState<Partial<Record<keyof StartingHours, string>>>({});
  const startH = person.startH ?? usual;
  if (!startH) return null;
  const { weekday, weekend } = startH;
  return (
    <Group gap="xs" mt="xs" align="end">
      {PARTS.map(({ part, label }) => {
        const text = typed[part] ?? clockText(startH[part]);
        return (
          <TextInput
            key={part}
            type="time"
            label={label}
            aria-label={`${person.name}, ${label.toLowerCase()}`}
            value={text}
            error={text === '' ? 'Give a time, such as 07:30.' : undefined}
            onChange={(event) => setTyped({ ...typed, [part]: event.currentTarget.value })}
            onBlur={() => {
              const hours = hoursOf(text);
              if (hours === undefined || hours === startH[part]) return;
              onSave({ startH: { weekday, weekend, [part]: hours } });
            }}
          />
        );
      })}
      {!person.startH && <Text size="sm">Taken as usual until you say.</Text>}
    </Group>
  );
}

const clockText = (hours: number): string => {
  const minutes = Math.round(60 * hours);
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
};

function hoursOf(text: string): number | undefined {
  const [hours, minutes] = text.split(':').map(Number);
  return hours === undefined || minutes === undefined ? undefined : hours + minutes / 60;
}
