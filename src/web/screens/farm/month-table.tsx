import { Table, Text } from '@mantine/core';
import { Fragment, type ClipboardEvent, type ReactNode } from 'react';
import { farmFields } from '../../../../shared/farm/farm.js';
import { MONTHS } from '../../../../shared/farm/field.js';
import { unitLabel, type UnitSystem } from '../../../../shared/units/unit.js';
import { messagesByField } from '../../fields/field-words.js';
import type { FormWords } from '../../../../shared/problems/field-problem.js';
import { useMark } from '../../fields/assumed.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { problemsOfTable } from './farm-problems.js';
import { pastedMonths } from './pasted-months.js';
import './farm.css';

const FIELDS = farmFields.fields;

interface Props {
  readonly words: FormWords;
  readonly units: UnitSystem;
  readonly errors: Readonly<Record<string, ReactNode>>;
  readonly min: readonly (number | undefined)[];
  readonly max: readonly (number | undefined)[];
  readonly onMin: (values: number[]) => void;
  readonly onMax: (values: number[]) => void;
  readonly rain: readonly (number | undefined)[];
  readonly onRain: (values: (number | undefined)[]) => void;
}

/**
 * Lows, highs and rain by month; what is wrong with a month stands right below its boxes. A column
 * or table copied from elsewhere is taken from the box on into which it is pasted.
 */
export function MonthTable({ words, units, errors, min, max, rain, onMin, onMax, onRain }: Props) {
  const label = unitLabel('degC', units);
  const found = messagesByField(problemsOfTable(min, max), words);
  const columns = [
    { unit: 'degC', values: min, set: onMin },
    { unit: 'degC', values: max, set: onMax },
    { unit: 'rainMm', values: rain, set: onRain },
  ] as const;
  const pasteFrom = (month: number, column: number) => (event: ClipboardEvent) => {
    const from = columns.slice(column);
    const text = event.clipboardData.getData('text');
    const filled = pastedMonths(text, month, { columns: from, units });
    if (!filled) return;
    event.preventDefault();
    from.forEach(({ set }, k) => set(filled[k] as number[]));
  };
  const cell = (
    month: number,
    name: string,
    field: string,
    values: readonly (number | undefined)[],
    onChange: (values: number[]) => void,
  ) => (
    <QuantityInput
      aria-label={`${MONTHS[month]} average ${name}, ${label}`}
      size="sm"
      field={FIELDS.monthlyMinC.of}
      label={undefined}
      units={units}
      messageId={`month-${month}`}
      error={found[`${field}.${month}`] ?? errors[`${field}.${month}`]}
      value={values[month]}
      onChange={(next) => {
        const all = MONTHS.map((_, k) => values[k]);
        all[month] = next;
        onChange(all as number[]);
      }}
    />
  );
  const message = (month: number) =>
    ['monthlyMinC', 'monthlyMaxC', 'monthlyRainMm'].flatMap((field) => {
      const at = `${field}.${month}`;
      return found[at] ?? errors[at] ?? [];
    });
  return (
    <Table withRowBorders={false} verticalSpacing={2} className="month-table">
      <Table.Thead>
        <Table.Tr>
          <Table.Th>Month</Table.Th>
          <MarkedHead of="monthlyMinC">Low, {label}</MarkedHead>
          <MarkedHead of="monthlyMaxC">High, {label}</MarkedHead>
          <MarkedHead of="monthlyRainMm">Rain, {unitLabel('rainMm', units)}</MarkedHead>
        </Table.Tr>
      </Table.Thead>
      <Table.Tbody>
        {MONTHS.map((name, month) => (
          <Fragment key={name}>
            <Table.Tr>
              <Table.Th scope="row" fw={400}>
                {/* Short, so that a phone has room for three boxes beside it. */}
                <span aria-label={name}>{name.slice(0, 3)}</span>
              </Table.Th>
              <Table.Td onPaste={pasteFrom(month, 0)}>
                {cell(month, 'low', 'monthlyMinC', min, onMin)}
              </Table.Td>
              <Table.Td onPaste={pasteFrom(month, 1)}>
                {cell(month, 'high', 'monthlyMaxC', max, onMax)}
              </Table.Td>
              <Table.Td onPaste={pasteFrom(month, 2)}>
                <QuantityInput
                  aria-label={`${name} rain, ${unitLabel('rainMm', units)}`}
                  size="sm"
                  field={FIELDS.monthlyRainMm.of}
                  label={undefined}
                  units={units}
                  messageId={`month-${month}`}
                  error={errors[`monthlyRainMm.${month}`]}
                  value={rain[month]}
                  onChange={(next) => onRain(MONTHS.map((_, k) => (k === month ? next : rain[k])))}
                />
              </Table.Td>
            </Table.Tr>
            {0 < message(month).length && (
              <Table.Tr>
                <Table.Td id={`month-${month}`} colSpan={4}>
                  {message(month).map((text, k) => (
                    <Text key={k} size="sm" c="stop">
                      {text}
                    </Text>
                  ))}
                </Table.Td>
              </Table.Tr>
            )}
          </Fragment>
        ))}
      </Table.Tbody>
    </Table>
  );
}

/** The head of a column, with a quiet word where nobody has said what stands in it. */
function MarkedHead({
  of,
  children,
}: {
  of: 'monthlyMinC' | 'monthlyMaxC' | 'monthlyRainMm';
  children: ReactNode;
}) {
  const mark = useMark(FIELDS[of].label);
  return (
    <Table.Th>
      {children} {mark && <span className="assumed">{mark}</span>}
    </Table.Th>
  );
}
