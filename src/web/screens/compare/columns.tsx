import { Table, Text } from '@mantine/core';
import type { Quantity } from '../../../../shared/explain/quantity.js';
import type { ChoiceColumn, Comparison } from '../../../../shared/plan/compare/compare-choices.js';
import { Num } from '../../explain/number.js';
import { WideTable } from '../../shell/wide-table.js';

/** The differences in words, then the numbers: a table, or on a phone a card a column. */
export function Columns({ comparison: { columns } }: { comparison: Comparison }) {
  return (
    <>
      <ul className="compare-said">
        {columns.slice(1).map((column, k) => (
          <li key={k}>
            <b>{column.label}:</b> {saidOf(column)}
          </li>
        ))}
      </ul>
      <div className="compare-cards">
        {columns.map((column, k) => (
          <Card key={k} column={column} />
        ))}
      </div>
      <div className="compare-table">
        <WideTable label="Side by side">
          <Table>
            <Table.Thead>
              <Table.Tr>
                <Table.Td />
                {columns.map(({ label }, k) => (
                  <Table.Th key={k} scope="col">
                    {label}
                  </Table.Th>
                ))}
              </Table.Tr>
            </Table.Thead>
            <Table.Tbody>
              {rowsOf(columns).map(([label, of]) => (
                <Table.Tr key={label}>
                  <Table.Th scope="row" fw={400}>
                    {label}
                  </Table.Th>
                  {columns.map((column, k) => {
                    const number = of(column);
                    return <Table.Td key={k}>{number ? <Num of={number} /> : '–'}</Table.Td>;
                  })}
                </Table.Tr>
              ))}
              <Table.Tr>
                <Table.Th scope="row" fw={400}>
                  Does not fit
                </Table.Th>
                {columns.map((column, k) => (
                  <Table.Td key={k}>
                    <NotFitting column={column} />
                  </Table.Td>
                ))}
              </Table.Tr>
            </Table.Tbody>
          </Table>
        </WideTable>
      </div>
    </>
  );
}

const saidOf = ({ said, leftOut = [], notPlanned }: ChoiceColumn): string =>
  notPlanned ?? `${[...said, ...leftOut].join(', ')}.`;

function Card({ column }: { column: ChoiceColumn }) {
  return (
    <section className="compare-card" aria-label={column.label}>
      <h2>{column.label}</h2>
      <dl>
        {rowsOf([column]).map(([label, of]) => {
          const number = of(column);
          return (
            number && (
              <div key={label}>
                <dt>{label}</dt>
                <dd>
                  <Num of={number} />
                </dd>
              </div>
            )
          );
        })}
      </dl>
      {0 < column.doesNotFit.length && <Text size="sm">Does not fit:</Text>}
      <NotFitting column={column} />
    </section>
  );
}

function NotFitting({ column: { doesNotFit, notPlanned } }: { column: ChoiceColumn }) {
  if (notPlanned !== undefined) return <>{notPlanned}</>;
  if (doesNotFit.length === 0) return <>All of it fits.</>;
  return (
    <ul className="compare-not">
      {doesNotFit.map((words) => (
        <li key={words}>{words}</li>
      ))}
    </ul>
  );
}

type Row = readonly [label: string, of: (column: ChoiceColumn) => Quantity | undefined];

function rowsOf(columns: readonly ChoiceColumn[]): readonly Row[] {
  const isMeat = columns.some(({ yields }) => yields?.unit === 'kg');
  const rows: readonly Row[] = [
    [isMeat ? 'Cost, dressed' : 'Cost of a dozen', ({ each }) => each],
    ['All costs', ({ costs }) => costs],
    [isMeat ? 'Meat' : 'Eggs in the first year', ({ yields }) => yields],
    [isMeat ? 'Birds to process' : 'Hens at the first egg', ({ birds }) => birds],
    ['Work', ({ hours }) => hours],
    ['Feed', ({ feed }) => feed],
    ['Freezer at once', ({ freezer }) => freezer],
    [isMeat ? 'Birds lost on the way' : 'Lost before the first egg', ({ lost }) => lost],
    ['As many as you want', ({ enough }) => enough],
    ['Nights too cold in the first week out', ({ coldNights }) => coldNights],
  ];
  return rows.filter(([, of]) => columns.some((column) => of(column)));
}
