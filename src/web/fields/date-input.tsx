import { TextInput, type TextInputProps } from '@mantine/core';
import { useMarkedLabel } from './assumed.js';

interface Props extends Omit<TextInputProps, 'value' | 'onChange' | 'type'> {
  readonly value: string | undefined;
  readonly onChange: (date: string | undefined) => void;
}

/** A plain date by the platform's own picker. */
export function DateField({ value, onChange, ...rest }: Props) {
  const label = useMarkedLabel(rest.label);
  return (
    <TextInput
      {...rest}
      label={label}
      type="date"
      value={value ?? ''}
      onChange={(event) => onChange(event.currentTarget.value || undefined)}
    />
  );
}
