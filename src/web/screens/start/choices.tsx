import { ActionIcon } from '@mantine/core';
import { IconMinus, IconPlus } from '@tabler/icons-react';
import { useId } from 'react';
import '../../fields/fields.css';

/** One of a few choices, all in sight, each as large as a thumb; none is a choice too. */
export function Choices<T extends string>({
  legend,
  label,
  value,
  options,
  onChange,
}: {
  legend: string;
  /** Where the legend alone does not say whose choice it is. */
  label?: string;
  value: T | undefined;
  options: readonly { readonly id: T; readonly name: string; readonly about?: string }[];
  onChange: (value: T) => void;
}) {
  const group = useId();
  return (
    <fieldset className="plain-fieldset" aria-label={label}>
      <legend>{legend}</legend>
      <div className="start-choices">
        {options.map(({ id, name, about }) => (
          <label key={id} className="start-choice">
            <input type="radio" name={group} checked={value === id} onChange={() => onChange(id)} />
            <span>
              {name} {about !== undefined && <small>{about}</small>}
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

/** A small count that is stepped up and down. */
export function Count({
  label,
  value,
  least = 0,
  most,
  onChange,
}: {
  label: string;
  value: number;
  least?: number;
  most: number;
  onChange: (value: number) => void;
}) {
  const id = useId();
  return (
    <div role="group" aria-labelledby={id}>
      <span id={id}>{label}</span>
      <div className="start-count">
        <ActionIcon
          variant="default"
          aria-label={`Fewer ${label.toLowerCase()}`}
          disabled={value <= least}
          onClick={() => onChange(value - 1)}
        >
          <IconMinus aria-hidden />
        </ActionIcon>
        <output>{value}</output>
        <ActionIcon
          variant="default"
          aria-label={`More ${label.toLowerCase()}`}
          disabled={most <= value}
          onClick={() => onChange(value + 1)}
        >
          <IconPlus aria-hidden />
        </ActionIcon>
      </div>
    </div>
  );
}
