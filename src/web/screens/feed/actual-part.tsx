import { Table, Text } from '@mantine/core';
import type { FeedActualYear } from '../../../../shared/plan/feed-year/feed-actual-year.js';
import type { FeedActual } from '../../../../shared/plan/feed-year/feed-actual.js';
import type { FeedYear } from '../../../../shared/plan/feed-year/feed-year.js';
import { formatMoney } from '../../../../shared/units/format.js';
import type { SavedFarm } from '../../api/queries.js';
import { ConversionUnit, Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { Folded } from '../../shell/folded.js';

type Year = Pick<FeedYear, 'actual' | 'actualOfAll'>;

/** What feed cost beside its plan, where the difference comes from, and what it makes of the rest. */
export function ActualPart({ year, farm }: { year: Year; farm: SavedFarm }) {
  const { actual, actualOfAll } = year;
  if (!actualOfAll) return null;
  const { toCome } = actualOfAll;
  const [only] = actual.length === 1 ? actual : [];
  return (
    <Folded
      id="beside-the-plan"
      title="Beside the plan"
      answer={saidOf(actualOfAll, farm)}
      isForScreen
    >
      {only ? (
        <OfBatch actual={only} farm={farm} />
      ) : (
        <>
          <Text>
            {saidOf(actualOfAll, farm)}, of {actual.length} batches together.
          </Text>
          <Parts of={actualOfAll} />
        </>
      )}
      {toCome && (
        <Text mb="sm">
          Until the end of the year they still eat for <Num of={toCome.now} /> by what you told, and
          for <Num of={toCome.planned} /> by the first plan. What to buy above goes by what you
          told.
        </Text>
      )}
      {!only &&
        actual.map((each) => (
          <Folded
            key={each.batchId}
            id={`beside-${each.batchId}`}
            title={each.name}
            answer={saidOf(each, farm)}
            level={3}
          >
            <OfBatch actual={each} farm={farm} />
          </Folded>
        ))}
    </Folded>
  );
}

function saidOf({ actual, planned }: Pick<FeedActual, 'actual' | 'planned'>, farm: SavedFarm) {
  const over = actual.value - planned.value;
  if (over === 0) return 'As planned';
  return `${formatMoney(Math.abs(over), farm.currency)} ${0 < over ? 'more' : 'less'} than planned`;
}

function OfBatch({ actual, farm }: { actual: FeedActual; farm: SavedFarm }) {
  const sayDate = useSayDate();
  const { from, to, used, conversion } = actual;
  return (
    <>
      <Text>
        {saidOf(actual, farm)} from {sayDate(from)} to {sayDate(to)}, for <Num of={used} />.
      </Text>
      <Parts of={actual} />
      {conversion && (
        <Text size="sm">
          <Num of={conversion} /> <ConversionUnit />
        </Text>
      )}
    </>
  );
}

function Parts({ of }: { of: Omit<FeedActualYear, 'toCome'> }) {
  const { planned, heads, intake, waste, price, actual } = of;
  return (
    <Table mb="sm">
      <Table.Tbody>
        {[planned, heads, intake, waste, price, actual].map((part, k) => (
          <Table.Tr key={part.label}>
            <Table.Th scope="row" fw={k === 0 || k === 5 ? 700 : 400}>
              {part.label}
            </Table.Th>
            <Table.Td ta="right">
              <Num of={part} />
            </Table.Td>
          </Table.Tr>
        ))}
      </Table.Tbody>
    </Table>
  );
}
