import { Checkbox, Textarea, TextInput } from '@mantine/core';
import { useId, type ComponentProps } from 'react';
import type { Field } from '../../../shared/farm/field.js';
import { BOUGHT_WORDS, CAUSE_WORDS, LEFT_WORDS } from '../../../shared/farm/say-fact.js';
import type { UnitSystem } from '../../../shared/units/unit.js';
import { DateField } from './date-input.js';
import { EachWeight } from './each-weight.js';
import { PriceInput } from './price-input.js';
import { QuantityInput } from './quantity-input.js';
import { Select } from './select.js';

interface Props {
  readonly field: Field;
  readonly reader: { readonly units: UnitSystem; readonly currency: string };
  /** Rows of which it names one by its id. */
  readonly rows?: readonly { readonly id: string; readonly name: string }[];
  readonly isFirst?: boolean;
  /** Names that a text most likely is. */
  readonly suggested?: readonly string[];
  /** Said under the box. */
  readonly hint?: string | undefined;
  readonly value: unknown;
  readonly error?: string | undefined;
  readonly onChange: (value: unknown) => void;
}

/** A box for a value, by how its field is described; nothing for what nobody types. */
export function DescribedField({
  field,
  reader,
  rows,
  isFirst,
  suggested,
  hint,
  value,
  error,
  onChange,
}: Props) {
  const shown = {
    ...{ label: field.label, error },
    ...(hint === undefined ? {} : { description: hint }),
    ...(isFirst ? { 'data-autofocus': true } : {}),
  };
  const typed = value as string | undefined;
  const none = field.isOptional ? { none: 'Not said' } : {};
  if (rows) return <Select {...shown} {...none} value={typed} options={rows} onChange={onChange} />;
  switch (field.kind) {
    case 'number':
      return (
        <QuantityInput
          {...shown}
          field={field}
          units={reader.units}
          value={value as number | undefined}
          onChange={onChange}
        />
      );
    case 'choice': {
      const options = field.allowed.map((id) => ({ id, name: CHOICES[id] ?? id }));
      return <Select {...shown} {...none} value={typed} options={options} onChange={onChange} />;
    }
    case 'yes-no':
      return (
        <Checkbox
          mt={{ base: 0, sm: 'lg' }}
          label={field.label}
          checked={value === true}
          onChange={(event) => onChange(event.currentTarget.checked || undefined)}
        />
      );
    case 'word':
      if (field.word.name === 'date')
        return <DateField {...shown} value={typed} onChange={onChange} />;
      return field.word.name === 'price' ? (
        <PriceInput {...shown} currency={reader.currency} value={typed} onChange={onChange} />
      ) : null;
    case 'text': {
      const text = {
        ...shown,
        maxLength: field.most,
        value: typed ?? '',
        onChange: (event: { currentTarget: { value: string } }) =>
          onChange(event.currentTarget.value || undefined),
      };
      return field.hasLines ? (
        <Textarea {...text} autosize minRows={3} />
      ) : (
        <SuggestedText {...text} names={suggested} />
      );
    }
    case 'list':
      return field.of.kind === 'number' ? (
        <EachWeight
          field={field.of}
          farm={reader}
          value={value as readonly number[] | undefined}
          error={error}
          onChange={onChange}
        />
      ) : null;
    default:
      return null;
  }
}

/**
 * A text with names to pick from, if there are any; another can be typed. Names may come later
 * than the box: it stays the same one, so that whoever types in it goes on.
 */
function SuggestedText({
  names = [],
  ...text
}: ComponentProps<typeof TextInput> & { readonly names: readonly string[] | undefined }) {
  const id = useId();
  return (
    <>
      <TextInput
        {...text}
        {...(names.length > 0
          ? {
              ...{ list: id, autoComplete: 'off' },
              // A name that is proposed gives way to the first letter of another.
              onFocus: (event: { currentTarget: HTMLInputElement }) => event.currentTarget.select(),
            }
          : {})}
      />
      {names.length > 0 && (
        <datalist id={id}>
          {names.map((name) => (
            <option key={name} value={name} />
          ))}
        </datalist>
      )}
    </>
  );
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** What choices are called. */
const CHOICES: Readonly<Record<string, string>> = Object.fromEntries(
  Object.entries({ ...CAUSE_WORDS, ...LEFT_WORDS, ...BOUGHT_WORDS, other: 'something else' }).map(
    ([id, words]) => [id, capital(words)],
  ),
);
