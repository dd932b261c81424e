import { ActionIcon, Anchor, Group, Progress, Table, Text, Title } from '@mantine/core';
import { IconChevronLeft, IconChevronRight } from '@tabler/icons-react';
import { Link } from 'wouter';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatDate } from '../../../../shared/units/dates.js';
import { formatValue } from '../../../../shared/units/format.js';
import type { Unit } from '../../../../shared/units/unit.js';
import type { YearCounts } from '../../../../shared/plan/record/year-counts.js';
import type { CountedYear } from '../../../../shared/plan/record/year-limits.js';
import { farmDay, type SavedFarm } from '../../api/queries.js';
import { useYearCounts } from '../../api/record-queries.js';
import { Cautions, Section } from '../../shell/section.js';
import { useAll } from '../../shell/states.js';

/** What was told of a calendar year, counted: rules of sales go by it. */
export function YearCard({
  farm,
  tables,
  year,
  setYear,
}: {
  farm: SavedFarm;
  tables: Tables;
  year: number;
  setYear: (year: number) => void;
}) {
  const thisYear = Number(farmDay(farm).slice(0, 4));
  const all = useAll(useYearCounts(farm.id, year));
  if ('waiting' in all) return all.waiting;
  const [counts] = all.data;
  const rows = rowsOf(counts, farm);
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
      <NotSaid times={counts.milkNotSaid} />
      <Unpriced {...counts.withoutMoney} />
      <Limits of={counts.limits} farm={farm} />
      {0 < counts.birds.processed + counts.cattle.slaughtered && (
        <Cautions keys={['slaughter']} of={['slaughter']} tables={tables} />
      )}
    </Section>
  );
}

/** What the place may in a year, where somebody typed it, and how near it is. */
export function Limits({ of, farm }: { of: CountedYear['limits']; farm: SavedFarm }) {
  const say = (n: number) => formatValue(n, 'count', farm);
  return (
    <>
      {of.length === 0 ? (
        <Text size="sm" mt="sm" className="no-print">
          Rules of sales often hold a number for a calendar year.{' '}
          <Anchor component={Link} href={`/farm/${farm.id}/place`}>
            Type the limits of your place
          </Anchor>
          , and they are watched.
        </Text>
      ) : (
        <Title order={3} size="h4" mt="md">
          Limits of the year
        </Title>
      )}
      {of.map(({ of: what, label, told, planned = 0, limit }) => (
        <div key={what} className="year-limit">
          <Text>
            {label}: <b>{say(told)}</b> of {say(limit)}
            {0 < planned && `, ${say(planned)} more planned`}
          </Text>
          <Progress.Root size="lg" aria-hidden>
            <Progress.Section
              value={(100 * Math.min(told, limit)) / limit}
              color={limit < told ? 'stop' : 'accent'}
            />
            <Progress.Section
              value={(100 * Math.max(0, Math.min(planned, limit - told))) / limit}
              color="gray"
            />
          </Progress.Root>
          {limit < told + planned && (
            <Text c="stop" size="sm" role="alert">
              {limit < told
                ? `${say(told - limit)} over the limit. Ask the office that grants it before more goes.`
                : `As planned it comes to ${say(told + planned)}: ${say(told + planned - limit)} over the limit.`}
            </Text>
          )}
        </div>
      ))}
    </>
  );
}

/** What was told of a year, counted: only what there is. */
export function rowsOf(
  { birds, eggs, milkL, milkKeptOutL, calves, cattle, money, rain, usualRainMm = 0 }: CountedYear,
  farm: SavedFarm,
): [string, number, Unit][] {
  const day = (on: string) => formatDate(on, { ...farm, today: on });
  const span = rain ? `, ${day(rain.from)} to ${day(rain.to)}` : '';
  const rows: [string, number, Unit][] = [
    ['Birds that came alive', birds.came, 'count'],
    ['Birds that died', birds.died, 'count'],
    ['Birds processed', birds.processed, 'count'],
    ['Birds sold alive', birds.sold, 'count'],
    ['Birds given away alive', birds.given, 'count'],
    ['Eggs counted', eggs.counted, 'eggs'],
    ['Eggs sold', eggs.sold, 'eggs'],
    ['Eggs given away', eggs.given, 'eggs'],
    ['Eggs not used: medicine', eggs.keptOut, 'eggs'],
    ['Milk', milkL, 'L'],
    ['Milk thrown away: medicine', milkKeptOutL, 'L'],
    ['Calves born alive', calves, 'count'],
    ['Cattle that died', cattle.died, 'count'],
    ['Cattle sold', cattle.sold, 'count'],
    ['Cattle slaughtered', cattle.slaughtered, 'count'],
    ['Cattle given away', cattle.given, 'count'],
    [`Rain in the gauge${rain?.from === rain?.to ? '' : span}`, rain?.mm ?? 0, 'rainMm'],
    [`Rain that is usual here${span}`, usualRainMm, 'rainMm'],
    ['Money from animals and eggs', money.taken, 'money'],
    ['Money spent', money.spent, 'money'],
  ];
  return rows.filter(([, value]) => 0 < value);
}

function NotSaid({ times }: { readonly times: number }) {
  if (times === 0) return null;
  return (
    <Text size="sm" c="dimmed" mt="xs">
      {times === 1 ? '1 milking' : `${times} milkings`} told while one of them had a medicine, and
      not how much of it was kept out: that milk is counted as used.
    </Text>
  );
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
