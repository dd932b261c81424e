import type { ReactNode } from 'react';
import type { NumberField } from '../../../shared/farm/field.js';
import type { UnitSystem } from '../../../shared/units/unit.js';
import { QuantityInput } from './quantity-input.js';

/** A row with one of its numbers; without a value it has none, as before anything was typed. */
export function withNumber<Row extends object, Name extends keyof Row>(
  row: Row,
  name: Name,
  value: Row[Name] | undefined,
): Row {
  const { [name]: _before, ...rest } = row;
  return (value === undefined ? rest : { ...rest, [name]: value }) as Row;
}

/** Boxes for numbers that may be left out, each by how its field is described. */
export function NumberFields<Row extends object, Name extends keyof Row & string>({
  of,
  names,
  fields,
  units,
  errorAt,
  onChange,
}: {
  /** What holds them now. */
  readonly of: Row;
  readonly names: readonly Name[];
  readonly fields: Readonly<Record<Name, NumberField>>;
  readonly units: UnitSystem;
  readonly errorAt: (name: Name) => ReactNode;
  readonly onChange: (next: Row) => void;
}) {
  return names.map((name) => (
    <QuantityInput
      key={name}
      field={fields[name]}
      units={units}
      value={of[name] as number | undefined}
      error={errorAt(name)}
      onChange={(value) => onChange(withNumber(of, name, value as Row[Name] | undefined))}
    />
  ));
}
