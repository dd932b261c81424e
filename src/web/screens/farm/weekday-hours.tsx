import { Group, Input } from '@mantine/core';
import type { ReactNode } from 'react';
import { personFields } from '../../../../shared/farm/farm.js';
import type { UnitSystem } from '../../../../shared/units/unit.js';
import { useMark } from '../../fields/assumed.js';
import { QuantityInput } from '../../fields/quantity-input.js';

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

const FIELD = personFields.fields.hoursByWeekday;
const HOURS = FIELD.of;

/** Hours that somebody has for the farm on each day of the week. */
export function WeekdayHours({
  hours,
  usual,
  units,
  errorAt,
  onChange,
}: {
  hours: readonly (number | undefined)[] | undefined;
  usual: readonly number[];
  units: UnitSystem;
  errorAt: (field: string) => ReactNode;
  onChange: (hours: (number | undefined)[]) => void;
}) {
  const shown = hours ?? usual;
  const isAssumed = useMark(FIELD.label) !== undefined || !hours;
  return (
    <Input.Wrapper
      label={<>Hours for the farm {isAssumed && <span className="assumed">assumed</span>}</>}
      error={errorAt('hoursByWeekday')}
      component="fieldset"
      className="plain-fieldset"
    >
      <Group gap="xs" align="end">
        {WEEKDAYS.map((day, k) => (
          <QuantityInput
            key={day}
            w={82}
            label={day}
            aria-label={`Hours on ${day}`}
            field={HOURS}
            units={units}
            value={shown[k]}
            error={errorAt(`hoursByWeekday.${k}`)}
            onChange={(value) => onChange(WEEKDAYS.map((_, i) => (i === k ? value : shown[i])))}
          />
        ))}
      </Group>
    </Input.Wrapper>
  );
}
