import { ActionIcon, Group, Table, Text } from '@mantine/core';
import { IconChevronLeft, IconChevronRight } from '@tabler/icons-react';
import { useState } from 'react';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatValue } from '../../../../shared/units/format.js';
import type { Unit } from '../../../../shared/units/unit.js';
import type { YearCounts } from '../../../../shared/plan/record/year-counts.js';
import { farmDay, type SavedFarm } from '../../api/queries.js';
import { useYearCounts } from '../../api/record-queries.js';
import { Cautions, Section } from '../../shell/section.js';
import { useAll } from '../../shell/states.js';

/** What was told of a calendar year, counted: rules of sales go by it. */
export function YearCard({ farm, tables }: { farm: SavedFarm; tables: Tables }) {
  const [year, setYear] = useState(() => Number(farmDay(farm).slice(0, 4)));
  const thisYear = Number(farmDay(farm).slice(0, 4));
  const all = useAll(useYearCounts(farm.id, year));
  if ('waiting' in all) return all.waiting;
  const [counts] = all.data;
  const rows = rowsOf(counts);
  return (
    <Section title={`January to December ${year}`}>
      <Group gap="xs" className="no-print" mb="sm">
        <ActionIcon
          variant="default"
          size={48}
          aria-label={`The year ${year - 1}`}
          onClick={() => setYear(year - 1)}
        >
          <IconChevronLeft aria-hidden />
        </ActionIcon>
        <ActionIcon
          variant="default"
          size={48}
          aria-label={`The year ${year + 1}`}
          disabled={thisYear <= year}
          onClick={() => setYear(year + 1)}
        >
          <IconChevronRight aria-hidden />
        </ActionIcon>
      </Group>
      {rows.length === 0 ? (
        <Text>Nothing that is counted by the year was told.</Text>
      ) : (
        <Table>
          <Table.Tbody>
            {rows.map(([label, value, unit]) => (
              <Table.Tr key={label}>
                <Table.Th scope="row" fw={400}>
                  {label}
                </Table.Th>
                <Table.Td fw={700} ta="right">
                  {formatValue(value, unit, farm)}
                </Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      )}
      <Unpriced {...counts.withoutMoney} />
      {0 < counts.birds.processed && (
        <Cautions keys={['slaughter']} of={['slaughter']} tables={tables} />
      )}
    </Section>
  );
}

function rowsOf({ birds, eggs, milkL, calves, money }: YearCounts): [string, number, Unit][] {
  const rows: [string, number, Unit][] = [
    ['Birds that came alive', birds.came, 'count'],
    ['Birds that died', birds.died, 'count'],
    ['Birds processed', birds.processed, 'count'],
    ['Birds sold alive', birds.sold, 'count'],
    ['Birds given away alive', birds.given, 'count'],
    ['Eggs counted', eggs.counted, 'eggs'],
    ['Eggs sold', eggs.sold, 'eggs'],
    ['Eggs given away', eggs.given, 'eggs'],
    ['Milk', milkL, 'L'],
    ['Calves born alive', calves, 'count'],
    ['Money from birds and eggs', money.taken, 'money'],
    ['Money spent', money.spent, 'money'],
  ];
  return rows.filter(([, value]) => 0 < value);
}

function Unpriced({ sales, purchases }: YearCounts['withoutMoney']) {
  const parts = [
    ...(sales === 0 ? [] : [sales === 1 ? '1 sale' : `${sales} sales`]),
    ...(purchases === 0 ? [] : [purchases === 1 ? '1 purchase' : `${purchases} purchases`]),
  ];
  if (parts.length === 0) return null;
  return (
    <Text size="sm" c="dimmed" mt="xs">
      {parts.join(' and ')} told without the money.
    </Text>
  );
}
