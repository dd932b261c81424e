import { Table, Text } from '@mantine/core';
import { Fragment, type ReactNode } from 'react';
import { farmFields } from '../../../../shared/farm/farm.js';
import { MONTHS } from '../../../../shared/farm/field.js';
import { unitLabel, type UnitSystem } from '../../../../shared/units/unit.js';
import { messagesByField } from '../../fields/field-words.js';
import type { FormWords } from '../../../../shared/problems/field-problem.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { problemsOfTable } from './farm-problems.js';

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
      w={104}
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
    <Table withRowBorders={false} verticalSpacing={2} maw={540}>
      <Table.Thead>
        <Table.Tr>
          <Table.Th>Month</Table.Th>
          <Table.Th>Low, {label}</Table.Th>
          <Table.Th>High, {label}</Table.Th>
          <Table.Th>Rain, {unitLabel('rainMm', units)}</Table.Th>
        </Table.Tr>
      </Table.Thead>
      <Table.Tbody>
        {MONTHS.map((name, month) => (
          <Fragment key={name}>
            <Table.Tr>
              <Table.Th scope="row" fw={400}>
                {name}
              </Table.Th>
              <Table.Td>{cell(month, 'low', 'monthlyMinC', min, onMin)}</Table.Td>
              <Table.Td>{cell(month, 'high', 'monthlyMaxC', max, onMax)}</Table.Td>
              <Table.Td>
                <QuantityInput
                  aria-label={`${name} rain, ${unitLabel('rainMm', units)}`}
                  size="sm"
                  w={96}
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
