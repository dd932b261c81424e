import { Table, Text } from '@mantine/core';
import type { FeedActual } from '../../../../shared/plan/feed-year/feed-actual.js';
import { formatMoney } from '../../../../shared/units/format.js';
import type { SavedFarm } from '../../api/queries.js';
import { ConversionUnit, Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { Section } from '../../shell/section.js';

/** What feed cost beside its plan, and where the difference comes from. */
export function ActualPart({ actual, farm }: { actual: readonly FeedActual[]; farm: SavedFarm }) {
  if (actual.length === 0) return null;
  return (
    <Section title="Beside the plan">
      {actual.map((each) => (
        <OfBatch key={each.batchId} actual={each} farm={farm} />
      ))}
    </Section>
  );
}

function OfBatch({ actual, farm }: { actual: FeedActual; farm: SavedFarm }) {
  const sayDate = useSayDate();
  const { name, from, to, used, planned, conversion } = actual;
  const over = actual.actual.value - planned.value;
  const said = formatMoney(Math.abs(over), farm.currency);
  return (
    <>
      <h3>{name}</h3>
      <Text>
        {over === 0 ? 'As planned' : `${said} ${0 < over ? 'more' : 'less'} than planned`} from{' '}
        {sayDate(from)} to {sayDate(to)}, for <Num of={used} />.
      </Text>
      <Table mb="sm">
        <Table.Tbody>
          {[planned, actual.heads, actual.intake, actual.waste, actual.price, actual.actual].map(
            (of, k) => (
              <Table.Tr key={of.label}>
                <Table.Th scope="row" fw={k === 0 || k === 5 ? 700 : 400}>
                  {of.label}
                </Table.Th>
                <Table.Td ta="right">
                  <Num of={of} />
                </Table.Td>
              </Table.Tr>
            ),
          )}
        </Table.Tbody>
      </Table>
      {conversion && (
        <Text size="sm">
          <Num of={conversion} /> <ConversionUnit />
        </Text>
      )}
    </>
  );
}
