import { Table, Text } from '@mantine/core';
import type { PaddocksOfYear, PaddockYear } from '../../../../shared/plan/record/paddock-year.js';
import { formatAbout } from '../../../../shared/units/format.js';
import type { SavedFarm } from '../../api/queries.js';
import { usePaddocksByYear } from '../../api/record-queries.js';
import { useAll } from '../../shell/states.js';
import { WideTable } from '../../shell/wide-table.js';
import { YearsPart } from './years-part.js';

/** As many years as a page is wide. */
const YEARS_AT_ONCE = 6;

/** What each paddock carried, each year a column; nothing before there are two years of it. */
export function PaddocksByYearCard({
  farm,
  upTo,
  isFolded,
}: {
  farm: SavedFarm;
  upTo: number;
  isFolded?: boolean;
}) {
  const all = useAll(usePaddocksByYear(farm.id));
  if ('waiting' in all) return all.waiting;
  const years = all.data[0]
    .filter(({ year, paddocks }) => year <= upTo && paddocks.some(isUsed))
    .slice(-YEARS_AT_ONCE);
  if (years.length < 2) return null;
  const names = new Map(
    years.flatMap(({ paddocks }) =>
      paddocks.filter(isUsed).map((row) => [row.paddockId, row.name]),
    ),
  );
  const rows = [...names].sort(([, a], [, b]) => (a < b ? -1 : 1));
  return (
    <YearsPart
      id="paddock-years"
      title="Paddocks, year by year"
      answer={bestOfLast(years.at(-1)!, farm)}
      {...{ isFolded }}
    >
      <WideTable label="Paddocks, year by year">
        <Table className="stacks">
          <Table.Thead>
            <Table.Tr>
              <Table.Th>Paddock</Table.Th>
              {years.map(({ year }) => (
                <Table.Th key={year}>{year}</Table.Th>
              ))}
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {rows.map(([id, name]) => (
              <Table.Tr key={id}>
                <Table.Th scope="row">{name}</Table.Th>
                {years.map(({ year, paddocks }) => (
                  <Table.Td key={year} data-label={`${year}`}>
                    <Carried of={paddocks.find(({ paddockId }) => paddockId === id)} farm={farm} />
                  </Table.Td>
                ))}
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </WideTable>
      <Text size="sm" c="dimmed" mt="xs">
        Dry grass and hay taken off, and animal days. By the moves and bales that were told, with
        the cattle as they are typed now; a year of which few moves were told looks poorer than it
        was.
      </Text>
    </YearsPart>
  );
}

function Carried({ of, farm }: { of: PaddockYear | undefined; farm: SavedFarm }) {
  if (!of || !isUsed(of)) return 'none told';
  const { yieldKgPerHa, animalDaysPerHa } = of;
  return (
    <>
      {formatAbout(yieldKgPerHa, 'kgPerHa', farm)}
      <Text size="sm" c="dimmed">
        animal days: {formatAbout(animalDaysPerHa, 'perHa', farm)}
      </Text>
    </>
  );
}

function bestOfLast({ year, paddocks }: PaddocksOfYear, farm: SavedFarm): string {
  const best = paddocks.filter(isUsed).reduce((a, b) => (a.yieldKgPerHa < b.yieldKgPerHa ? b : a));
  return `Most in ${year}: ${best.name}, ${formatAbout(best.yieldKgPerHa, 'kgPerHa', farm)}`;
}

const isUsed = ({ stays, bales }: PaddockYear): boolean => 0 < stays || 0 < bales;
