import { NativeSelect, type NativeSelectProps } from '@mantine/core';
import { useMarkedLabel } from './assumed.js';

interface Props<T extends string> extends Omit<NativeSelectProps, 'value' | 'onChange' | 'data'> {
  readonly value: T | undefined;
  readonly onChange: (value: T | undefined) => void;
  readonly options: readonly { readonly id: T; readonly name: string }[];
  /** Text of the empty choice; without one, a choice must be made. */
  readonly none?: string;
}

/** A list of choices that works with a thumb, a keyboard and a screen reader: the platform's own. */
export function Select<T extends string>({ value, onChange, options, none, ...rest }: Props<T>) {
  const label = useMarkedLabel(rest.label);
  return (
    <NativeSelect
      {...rest}
      label={label}
      value={value ?? ''}
      onChange={(event) =>
        onChange(event.currentTarget.value === '' ? undefined : (event.currentTarget.value as T))
      }
      data={[
        ...(none === undefined ? [] : [{ value: '', label: none }]),
        ...options.map(({ id, name }) => ({ value: id, label: name })),
      ]}
    />
  );
}
