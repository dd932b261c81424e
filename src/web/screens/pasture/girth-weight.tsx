import { Button, Group, SimpleGrid, Text } from '@mantine/core';
import { useState } from 'react';
import { problemsOfNumber } from '../../../../shared/farm/bounds.js';
import { girthFields, type Girth } from '../../../../shared/farm/girth.js';
import { weightOfGirth } from '../../../../shared/pasture/weight-of-girth.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatValue } from '../../../../shared/units/format.js';
import type { UnitSystem } from '../../../../shared/units/unit.js';
import { Num } from '../../explain/number.js';
import { useOpener } from '../../explain/explain-panel.js';
import { QuantityInput } from '../../fields/quantity-input.js';

const FIELDS = girthFields.fields;
const NAMES = ['girthCm', 'lengthCm'] as const;

/** A weight worked out from a tape, for the box of a weight; the two lengths are not kept. */
export function GirthWeight({
  units,
  tables,
  onWeight,
}: {
  units: UnitSystem;
  tables: Tables;
  onWeight: (kg: number) => void;
}) {
  const { reader } = useOpener();
  const [isOpen, setOpen] = useState(false);
  const [typed, setTyped] = useState<{ girthCm?: number; lengthCm?: number }>({});
  if (!isOpen) {
    return (
      <Button variant="subtle" justify="start" onClick={() => setOpen(true)}>
        Work the weight out with a tape
      </Button>
    );
  }
  const weight = isWhole(typed) ? weightOfGirth(typed, tables.cattle.girth) : undefined;
  return (
    <div>
      <Text size="sm">
        Girth just behind the forelegs, length from the point of the shoulder to the pin bone.
      </Text>
      <SimpleGrid cols={2}>
        {NAMES.map((name) => (
          <QuantityInput
            key={name}
            field={FIELDS[name]}
            units={units}
            value={typed[name]}
            onChange={(value) =>
              setTyped(({ [name]: _before, ...rest }) =>
                value === undefined ? rest : { ...rest, [name]: value },
              )
            }
          />
        ))}
      </SimpleGrid>
      {weight && (
        <Group mt="xs">
          <Text>
            About <Num of={weight} />, at least {formatValue(weight.spread!.low, 'kg', reader)}
          </Text>
          <Button
            variant="default"
            onClick={() => {
              onWeight(weight.value);
              setOpen(false);
            }}
          >
            Take {formatValue(weight.value, 'kg', reader)}
          </Button>
        </Group>
      )}
    </div>
  );
}

const isWhole = (typed: { girthCm?: number; lengthCm?: number }): typed is Girth =>
  NAMES.every(
    (name) =>
      typed[name] !== undefined &&
      problemsOfNumber(name, typed[name], FIELDS[name].bounds).length === 0,
  );
