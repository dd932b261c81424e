import { TextInput, type TextInputProps } from '@mantine/core';
import { isPrice } from '../../../shared/money/money.js';

interface Props extends Omit<TextInputProps, 'value' | 'onChange'> {
  readonly value: string | undefined;
  readonly onChange: (price: string | undefined) => void;
  readonly currency: string;
}

/** A price as decimal text. A comma is taken for a point, as half of Europe types it. */
export function PriceInput({ value, onChange, currency, error, label, ...rest }: Props) {
  const bad = value !== undefined && !isPrice(value);
  return (
    <TextInput
      {...rest}
      label={`${String(label)}, ${currency}`}
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
