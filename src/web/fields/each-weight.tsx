import { Button, Group, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import type { NumberField } from '../../../shared/farm/field.js';
import { formatValue, type Reader } from '../../../shared/units/format.js';
import type { UnitSystem } from '../../../shared/units/unit.js';
import { QuantityInput } from './quantity-input.js';

interface Props {
  readonly field: NumberField;
  readonly farm: Reader & { readonly units: UnitSystem };
  readonly value: readonly number[] | undefined;
  readonly error?: string | undefined;
  readonly onChange: (value: readonly number[] | undefined) => void;
}

/**
 * Weights as they come off the scale, one after the other. The one that is being typed counts at
 * once, so that nothing is lost when the form is sent; text that cannot be read is NaN in its place.
 */
export function EachWeight({ field, farm, value = [], error, onChange }: Props) {
  const [isTyping, setTyping] = useState(false);
  const isLastTyped = isTyping && 0 < value.length;
  const taken = isLastTyped ? value.slice(0, -1) : value;
  const next = isLastTyped ? value.at(-1) : undefined;
  const { min, max } = field.bounds;
  const isRight = next !== undefined && min <= next && next <= max;
  const put = (kgs: readonly number[]) => onChange(kgs.length === 0 ? undefined : kgs);
  const type = (kg: number | undefined) => {
    setTyping(kg !== undefined);
    put(kg === undefined ? taken : [...taken, kg]);
  };
  const take = () => isRight && setTyping(false);
  return (
    <Stack gap="xs" mt="xs" style={{ gridColumn: '1 / -1' }}>
      <Group align="end" gap="xs" wrap="nowrap">
        <QuantityInput
          label={taken.length === 0 ? 'Or one by one: the first bird' : `Bird ${taken.length + 1}`}
          field={field}
          units={farm.units}
          value={next}
          error={error}
          onChange={type}
          onKeyDown={(event) => {
            if (event.key !== 'Enter' || next === undefined) return;
            // The next bird, not the end of the form.
            event.preventDefault();
            take();
          }}
        />
        <Button variant="default" style={{ flexShrink: 0 }} disabled={!isRight} onClick={take}>
          Next bird
        </Button>
      </Group>
      {0 < taken.length && (
        <Group gap="xs">
          <Text size="sm">
            {taken.map((kg) => formatValue(kg, field.bounds.unit, farm)).join(', ')}
          </Text>
          <Button
            variant="subtle"
            size="compact-sm"
            onClick={() => put([...taken.slice(0, -1), ...(next === undefined ? [] : [next])])}
          >
            Take the last one off
          </Button>
        </Group>
      )}
    </Stack>
  );
}
