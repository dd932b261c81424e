import { Button, Group, Text } from '@mantine/core';
import { useState } from 'react';
import { problemsOfNumber } from '../../../../shared/farm/bounds.js';
import { personFields, type Person } from '../../../../shared/farm/farm.js';
import { useTables, type SavedFarm } from '../../api/queries.js';
import '../../fields/fields.css';
import { QuantityInput } from '../../fields/quantity-input.js';

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

const HOURS = personFields.fields.hoursByWeekday.of;

/** Hours that somebody has for the farm on each day of the week. */
export function WeekdayHours({
  person,
  farm,
  onSave,
}: {
  person: Person;
  farm: SavedFarm;
  onSave: (part: Partial<Person>) => void;
}) {
  const tables = useTables();
  const usual = tables.data?.work.hoursByWeekday.values;
  const [hours, setHours] = useState<readonly (number | undefined)[]>();
  const shown = hours ?? person.hoursByWeekday ?? usual ?? [];
  const isWrong = shown.some(
    (each) => each === undefined || 0 < problemsOfNumber('hours', each, HOURS.bounds).length,
  );
  return (
    <>
      <Text size="sm" mt="sm">
        Hours for the farm{' '}
        {(!person.hoursByWeekday || person.assumed?.includes('hoursByWeekday')) && (
          <span className="assumed">assumed</span>
        )}
      </Text>
      <Group gap="xs" align="end">
        {WEEKDAYS.map((day, k) => (
          <QuantityInput
            key={day}
            w={82}
            label={day}
            aria-label={`${person.name}, hours on ${day}`}
            field={HOURS}
            units={farm.units}
            value={shown[k]}
            onChange={(value) => setHours(WEEKDAYS.map((_, i) => (i === k ? value : shown[i])))}
          />
        ))}
        {hours && (
          <Button
            variant="default"
            disabled={isWrong}
            onClick={() => {
              onSave({ hoursByWeekday: hours.map((each) => each ?? 0) });
              setHours(undefined);
            }}
          >
            Save hours
          </Button>
        )}
      </Group>
    </>
  );
}
