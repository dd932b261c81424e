import { Table, Text } from '@mantine/core';
import {
  byBreed,
  type BreedSum,
  type SumOfBatches,
} from '../../../../shared/plan/record/by-breed.js';
import { formatValue } from '../../../../shared/units/format.js';
import type { SavedFarm } from '../../api/queries.js';
import { useHowAllWent } from '../../api/record-queries.js';
import { useAll } from '../../shell/states.js';
import { WideTable } from '../../shell/wide-table.js';
import { YearsPart } from './years-part.js';

interface Column {
  readonly label: string;
  readonly of: (sum: BreedSum) => SumOfBatches | undefined;
  readonly say: (value: number, farm: SavedFarm, sum: BreedSum) => string;
}
const COLUMNS: readonly Column[] = [
  { label: 'Came', of: ({ came }) => came, say: (n, farm) => formatValue(n, 'count', farm) },
  {
    label: 'Lost',
    of: ({ lost }) => lost,
    say: (n, farm, { lostShare }) =>
      `${formatValue(n, 'count', farm)}${lostShare ? ` (${formatValue(Math.round(1000 * lostShare.value) / 1000, 'share', farm)})` : ''}`,
  },
  { label: 'Live each', of: ({ liveEach }) => liveEach, say: inUnit('kg') },
  {
    label: 'Age when processed',
    of: ({ age }) => age,
    say: (n, farm) => formatValue(Math.round(n), 'day', farm),
  },
  {
    label: 'Feed for one of live weight',
    of: ({ conversion }) => conversion,
    say: (n, farm) => formatValue(Math.round(100 * n) / 100, 'ratio', farm),
  },
  { label: 'Cost', of: ({ costLive }) => costLive, say: inUnit('moneyPerKg') },
  {
    label: 'Hours timed',
    of: ({ hours }) => hours,
    say: (n, farm, { reckonedHours }) =>
      `${formatValue(n, 'h', farm)}${reckonedHours ? `, reckoned ${formatValue(reckonedHours.value, 'h', farm)}` : ''}`,
  },
];

function inUnit(unit: 'kg' | 'moneyPerKg'): Column['say'] {
  return (value, farm) => formatValue(value, unit, farm);
}

/** Breeds side by side, and the years of each; nothing where there is one batch to look at. */
export function BreedsCard({
  farm,
  upTo,
  isFolded,
}: {
  farm: SavedFarm;
  upTo?: number;
  isFolded?: boolean;
}) {
  const all = useAll(useHowAllWent(farm.id));
  if ('waiting' in all) return all.waiting;
  const went = all.data[0].filter(
    ({ arrivedOn }) => upTo === undefined || Number(arrivedOn.slice(0, 4)) <= upTo,
  );
  const sums = byBreed(went);
  if (sums.length < 2 && (sums[0]?.batches ?? 0) < 2) return null;
  return (
    <YearsPart
      id="breeds"
      title="Breeds and years side by side"
      answer={[...new Set(sums.map(({ name }) => name))].join(' · ')}
      {...{ isFolded }}
    >
      <WideTable label="Breeds and years side by side">
        <Table className="stacks">
          <Table.Thead>
            <Table.Tr>
              <Table.Th>Breed</Table.Th>
              {COLUMNS.map(({ label }) => (
                <Table.Th key={label}>{label}</Table.Th>
              ))}
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {sums.map((sum) => (
              <Row key={`${sum.name} ${sum.year}`} sum={sum} farm={farm} />
            ))}
          </Table.Tbody>
        </Table>
      </WideTable>
      <Text size="sm" c="dimmed" mt="xs">
        Of batches that are over, by the year they came in: all feed over all weight, all cost over
        all weight. Where something is known of some of them only, (1 of 2) says of how many.
      </Text>
    </YearsPart>
  );
}

function Row({ sum, farm }: { sum: BreedSum; farm: SavedFarm }) {
  const { name, year, batches } = sum;
  return (
    <Table.Tr>
      <Table.Th scope="row" fw={year === undefined ? 700 : 400}>
        {name}, {year ?? 'all years'}
        <Text size="sm" c="dimmed">
          {batches === 1 ? '1 batch' : `${batches} batches`}
        </Text>
      </Table.Th>
      {COLUMNS.map(({ label, of, say }) => {
        const figure = of(sum);
        return (
          <Table.Td key={label} data-label={label}>
            {figure === undefined ? 'not known' : say(figure.value, farm, sum)}
            {figure !== undefined && figure.of < batches && (
              <Text span size="sm" c="dimmed">
                {' '}
                ({figure.of} of {batches})
              </Text>
            )}
          </Table.Td>
        );
      })}
    </Table.Tr>
  );
}
