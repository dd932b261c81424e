import { Table, Text } from '@mantine/core';
import { Fragment, type ReactNode } from 'react';
import { farmFields } from '../../../../shared/farm/farm.js';
import { MONTHS } from '../../../../shared/farm/field.js';
import { unitLabel, type UnitSystem } from '../../../../shared/units/unit.js';
import { messagesByField } from '../../fields/field-words.js';
import type { FormWords } from '../../../../shared/problems/field-problem.js';
import { useMark } from '../../fields/assumed.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { problemsOfTable } from './farm-problems.js';
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

/** Lows and highs by month; what is wrong with a month stands right below its two boxes. */
export function MonthTable({ words, units, errors, min, max, rain, onMin, onMax, onRain }: Props) {
  const label = unitLabel('degC', units);
  const found = messagesByField(problemsOfTable(min, max), words);
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
              <Table.Td>{cell(month, 'low', 'monthlyMinC', min, onMin)}</Table.Td>
              <Table.Td>{cell(month, 'high', 'monthlyMaxC', max, onMax)}</Table.Td>
              <Table.Td>
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
