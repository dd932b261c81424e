import { Table, Text } from '@mantine/core';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatAbout, formatValue } from '../../../../shared/units/format.js';
import type { Unit } from '../../../../shared/units/unit.js';
import type { PaddockYear } from '../../../../shared/plan/record/paddock-year.js';
import type { SavedFarm } from '../../api/queries.js';
import { usePaddockYears } from '../../api/record-queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { Section } from '../../shell/section.js';
import { useAll } from '../../shell/states.js';
import { WideTable } from '../../shell/wide-table.js';

const COLUMNS: readonly {
  readonly label: string;
  readonly unit: Unit;
  /** Worked out from what cattle of that weight eat: nobody knows it to the pound. */
  readonly isAbout?: true;
  readonly of: (row: PaddockYear) => number;
}[] = [
  { label: 'Times grazed', unit: 'count', of: ({ stays }) => stays },
  { label: 'Days grazed', unit: 'count', of: ({ days }) => days },
  {
    label: 'Animal days',
    unit: 'perHa',
    isAbout: true,
    of: ({ animalDaysPerHa }) => animalDaysPerHa,
  },
  { label: 'Grazed, dry', unit: 'kg', isAbout: true, of: ({ grazedKg }) => grazedKg },
  { label: 'Bales', unit: 'count', of: ({ bales }) => bales },
  { label: 'Yield, dry', unit: 'kgPerHa', isAbout: true, of: ({ yieldKgPerHa }) => yieldKgPerHa },
];

/** What each paddock carried in the year, the best one first. */
export function PaddocksCard({
  farm,
  tables,
  year,
}: {
  farm: SavedFarm;
  tables: Tables;
  year: number;
}) {
  const sayDate = useSayDate();
  const all = useAll(usePaddockYears(farm.id, year));
  if ('waiting' in all) return all.waiting;
  const [paddocks] = all.data;
  if (paddocks.every(({ stays, bales }) => stays === 0 && bales === 0)) return null;
  return (
    <Section title={`What each paddock carried in ${year}`}>
      <WideTable label={`What each paddock carried in ${year}`}>
        <Table className="stacks">
          <Table.Thead>
            <Table.Tr>
              <Table.Th>Paddock</Table.Th>
              {COLUMNS.map(({ label }) => (
                <Table.Th key={label}>{label}</Table.Th>
              ))}
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {paddocks.map((row) => (
              <Table.Tr key={row.paddockId}>
                <Table.Th scope="row">
                  {row.name}
                  <Text size="sm" c="dimmed">
                    {formatValue(row.areaM2, 'ha', farm)}
                  </Text>
                  {row.countedTo && (
                    <Text size="sm">
                      Counted to {sayDate(row.countedTo)}: nobody told where they are since.
                    </Text>
                  )}
                </Table.Th>
                {COLUMNS.map(({ label, unit, isAbout, of }) => (
                  <Table.Td key={label} data-label={label}>
                    {(isAbout ? formatAbout : formatValue)(of(row), unit, farm)}
                  </Table.Td>
                ))}
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </WideTable>
      <Text size="sm" c="dimmed" mt="xs">
        By the moves and bales that were told, with the cattle as they are typed now: 1,000 lb of
        them eat {formatValue(tables.cattle.animalUnits.dryKgPerUnitDay, 'kg', farm)} of dry matter
        a day. Hay fed on a paddock counts as its grass.
      </Text>
    </Section>
  );
}
