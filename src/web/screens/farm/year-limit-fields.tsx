import { Fieldset, SimpleGrid, Text } from '@mantine/core';
import { yearLimitFields, type YearLimits } from '../../../../shared/farm/farm.js';
import type { UnitSystem } from '../../../../shared/units/unit.js';
import { NumberFields } from '../../fields/number-fields.js';

const FIELDS = yearLimitFields.fields;
const NAMES = ['birdsProcessed', 'birdsSold', 'eggsSold'] as const;

interface Props {
  readonly units: UnitSystem;
  readonly limits: YearLimits | undefined;
  readonly errorOf: (name: keyof YearLimits) => string | undefined;
  readonly onChange: (limits: YearLimits | undefined) => void;
}

/** What may leave the place in a calendar year, where its rules hold a number. */
export function YearLimitFields({ units, limits = {}, errorOf, onChange }: Props) {
  return (
    <Fieldset legend="Limits of a year">
      <Text size="sm" mb="xs">
        Many places may process and sell without inspection only up to a number a calendar year. Ask
        your state or county office for yours and type it here: what is told is counted against it.
        Left empty, nothing is held.
      </Text>
      <SimpleGrid cols={{ base: 1, sm: 3 }}>
        <NumberFields
          of={limits}
          names={NAMES}
          fields={FIELDS}
          units={units}
          errorAt={errorOf}
          onChange={(next) => onChange(Object.keys(next).length === 0 ? undefined : next)}
        />
      </SimpleGrid>
    </Fieldset>
  );
}
