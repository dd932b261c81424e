import { NumberInput, type NumberInputProps } from '@mantine/core';
import { useEffect, useState } from 'react';
import { BOUNDS, type BoundName, type Bounds } from '../../../shared/farm/bounds.js';
import { formatValue } from '../../../shared/units/format.js';
import {
  fromShown,
  SHOWN,
  toShown,
  unitLabel,
  type Unit,
  type UnitSystem,
} from '../../../shared/units/unit.js';

interface Props extends Omit<NumberInputProps, 'value' | 'onChange' | 'min' | 'max'> {
  /** Stored value: SI. */
  readonly value: number | undefined;
  readonly onChange: (stored: number | undefined) => void;
  readonly bound: BoundName;
  readonly units: UnitSystem;
}

/**
 * A number typed in the farm's units and handed on in SI. What was typed stays as typed: a value
 * is only converted for showing when it came from elsewhere.
 */
export function QuantityInput({ value, onChange, bound, units, label, error, ...rest }: Props) {
  const { min, max, unit, integer } = BOUNDS[bound] as Bounds;
  const [typed, setTyped] = useState<{
    text: string | number;
    stored: number | undefined;
    units: UnitSystem;
  }>();
  const isOwn = typed !== undefined && typed.stored === value && typed.units === units;
  const shown = isOwn ? typed.text : value === undefined ? '' : rounded(value, unit, units);
  useEffect(() => {
    if (!isOwn) setTyped(undefined);
  }, [isOwn]);
  const unitText = unitLabel(unit, units);
  const isOut = value !== undefined && (value < min || max < value);
  return (
    <NumberInput
      {...rest}
      label={unitText ? `${String(label)}, ${unitText}` : label}
      value={shown}
      allowDecimal={!integer}
      decimalScale={integer ? 0 : 4}
      allowNegative={min < 0 || (unit === 'degC' && units === 'us')}
      hideControls={!integer}
      clampBehavior="none"
      error={
        error ??
        (isOut
          ? `From ${formatValue(min, unit, { units, currency: 'USD' })} to ${formatValue(max, unit, { units, currency: 'USD' })}.`
          : undefined)
      }
      onChange={(next) => {
        const number = next === '' || next === '-' ? undefined : Number(next);
        const stored =
          number === undefined || !Number.isFinite(number)
            ? undefined
            : fromShown(number, unit, units);
        setTyped({ text: next, stored, units });
        onChange(stored);
      }}
    />
  );
}

function rounded(value: number, unit: Unit, units: UnitSystem): number {
  const digits = Math.max(2, SHOWN[unit][units].digits);
  return Number(toShown(value, unit, units).toFixed(digits));
}
