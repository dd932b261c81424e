import { TextInput, type TextInputProps } from '@mantine/core';
import Big from 'big.js';
import { useState } from 'react';
import { shownPrice } from '../../../shared/money/unit-price.js';
import { fromShown, type UnitSystem } from '../../../shared/units/unit.js';
import { isPrice } from '../../../shared/money/money.js';
import { useMarkedLabel } from './assumed.js';

interface Props extends Omit<TextInputProps, 'value' | 'onChange'> {
  readonly value: string | undefined;
  readonly onChange: (price: string | undefined) => void;
  readonly currency: string;
}

/** A price as decimal text. A comma is taken for a point, as half of Europe types it. */
export function PriceInput({ value, onChange, currency, error, label, ...rest }: Props) {
  const marked = useMarkedLabel(`${String(label)}, ${currency}`);
  const bad = value !== undefined && !isPrice(value);
  return (
    <TextInput
      {...rest}
      label={marked}
      inputMode="decimal"
      value={value ?? ''}
      error={error ?? (bad ? 'Write a price such as 24.50.' : undefined)}
      onChange={(event) => {
        const text = event.currentTarget.value.trim().replace(',', '.');
        onChange(text === '' ? undefined : text);
      }}
    />
  );
}

/**
 * A price of a liter or a kilogram, typed for a US gallon or a pound where the farm reads those.
 * Stored for a liter or a kilogram.
 */
export function UnitPriceInput({
  value,
  onChange,
  units,
  of,
  ...rest
}: Props & { readonly units: UnitSystem; readonly of: 'L' | 'kg' }) {
  const [typed, setTyped] = useState<{
    text: string | undefined;
    stored: string | undefined;
    units: UnitSystem;
  }>();
  const isOwn = typed !== undefined && typed.stored === value && typed.units === units;
  const shown = isOwn
    ? typed.text
    : value !== undefined && isPrice(value)
      ? shownPrice(value, of, units)
      : value;
  return (
    <PriceInput
      {...rest}
      value={shown}
      onChange={(text) => {
        const stored =
          text !== undefined && isPrice(text)
            ? new Big(new Big(text).div(fromShown(1, of, units)).toFixed(6)).toString()
            : text;
        setTyped({ text, stored, units });
        onChange(stored);
      }}
    />
  );
}
