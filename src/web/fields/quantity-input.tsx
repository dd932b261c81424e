import { TextInput, type TextInputProps } from '@mantine/core';
import { useEffect, useState } from 'react';
import { problemsOfNumber, type Bounds } from '../../../shared/farm/bounds.js';
import type { NumberField } from '../../../shared/farm/field.js';
import { describeForForm } from '../../../shared/problems/field-problem.js';
import { angleText, readTyped, type Typed } from '../../../shared/units/typed.js';
import {
  SHOWN,
  toShown,
  unitLabel,
  type Unit,
  type UnitSystem,
} from '../../../shared/units/unit.js';
import { useMarkedLabel } from './assumed.js';

interface Props extends Omit<TextInputProps, 'value' | 'onChange' | 'type'> {
  /** Stored value: SI. NaN stands for text that cannot be read, so that it is never saved. */
  readonly value: number | undefined;
  readonly onChange: (stored: number | undefined) => void;
  /** What is known of the number: its label, where no other is given, its bounds and unit. */
  readonly field: NumberField;
  readonly units: UnitSystem;
  /** Element that holds the message when there is no room for one at the box. */
  readonly messageId?: string;
}

/**
 * A number typed in the farm's units, or with a unit of its own, and handed on in SI. What was
 * typed stays as typed: a value is only converted for showing when it came from elsewhere.
 */
export function QuantityInput({ messageId, ...props }: Props) {
  const { value, onChange, field, units, error, ...rest } = props;
  const label = 'label' in props ? props.label : field.label;
  const { unit, typedAs, min } = field.bounds;
  const [typed, setTyped] = useState<{
    text: string;
    read: Typed;
    stored: number | undefined;
    units: UnitSystem;
  }>();
  // Text that cannot be read stays until it is put right, whatever the form made of it.
  const isOwn = typed !== undefined && Object.is(typed.stored, value) && typed.units === units;
  useEffect(() => {
    if (!isOwn) setTyped(undefined);
  }, [isOwn]);
  const unitText = typedAs === 'percent' ? '%' : unitLabel(unit, units);
  const understood =
    isOwn && typed.read.is === 'value'
      ? typed.read.understood
      : value !== undefined && Number.isFinite(value) && isAngle(typedAs)
        ? angleText(value, typedAs)
        : undefined;
  const unread = isOwn && typed.read.is === 'unread' ? typed.read.why : undefined;
  const outside =
    value !== undefined && Number.isFinite(value)
      ? problemsOfNumber('', value, field.bounds).map((problem) =>
          describeForForm(
            problem,
            { labelOf: () => String(label ?? rest['aria-label']), unitOf: () => unit },
            { units, currency: 'USD' },
          ),
        )[0]
      : undefined;
  const message = unread ?? outside ?? error;
  const marked = useMarkedLabel(
    label !== undefined && unitText && !namesUnit(String(label), unitText)
      ? `${String(label)}, ${unitText}`
      : label,
  );
  const hasSign = min < 0 || unit === 'degC';
  return (
    <TextInput
      {...rest}
      label={marked}
      // The decimal keypad of a phone has neither a minus sign nor letters.
      inputMode={hasSign ? 'text' : 'decimal'}
      autoComplete="off"
      value={isOwn ? typed.text : shownText(value, unit, units)}
      description={understood === undefined ? rest.description : `Read as ${understood}.`}
      inputWrapperOrder={['label', 'input', 'description', 'error']}
      error={messageId === undefined ? message : Boolean(message)}
      aria-describedby={messageId}
      onChange={(event) => {
        const text = event.currentTarget.value;
        const read = readTyped(text, { unit, system: units, typedAs });
        const stored =
          read.is === 'value' ? read.stored : read.is === 'empty' ? undefined : Number.NaN;
        setTyped({ text, read, stored, units });
        onChange(stored);
      }}
    />
  );
}

/** What is taken when nothing is typed, as round as somebody would say it, for a placeholder. */
export function typedText(
  value: number | undefined,
  { bounds }: NumberField,
  units: UnitSystem,
): string | undefined {
  if (value === undefined) return undefined;
  const said = Number(shownText(value, bounds.unit, units));
  return String(Number(said.toPrecision(Math.abs(said) < 10 ? 2 : 3)));
}

const isAngle = (typedAs: Bounds['typedAs']): typedAs is 'latitude' | 'longitude' =>
  typedAs === 'latitude' || typedAs === 'longitude';

/** A length of meters or feet from which on it is whole ones that count. */
const HEIGHT_FROM = 300;

function shownText(value: number | undefined, unit: Unit, units: UnitSystem): string {
  if (value === undefined || !Number.isFinite(value)) return '';
  // No thermometer reads hundredths; a place needs more than two decimals of a degree.
  // Nobody knows a height above the sea to a hundredth of a foot; no building is that long.
  const shown = toShown(value, unit, units);
  if (unit === 'm' && HEIGHT_FROM <= Math.abs(shown)) return String(Math.round(shown));
  const digits =
    unit === 'degC' ? 1 : unit === 'ratio' ? 4 : Math.max(2, SHOWN[unit][units].digits);
  return String(Number(shown.toFixed(digits)));
}

/** “Eggs in all” needs no “eggs” after it. */
const namesUnit = (label: string, unit: string): boolean =>
  label.toLowerCase().startsWith(`${unit} `);
