import { Anchor, Button, SimpleGrid, Table, Text } from '@mantine/core';
import { Link } from 'wouter';
import type {
  FeedSpent,
  SpentPart as Part,
} from '../../../../shared/plan/feed-spent/feed-spent.js';
import { formatMoney } from '../../../../shared/units/format.js';
import { listed } from '../../../../shared/units/listed.js';
import { useFeedSpent } from '../../api/feed-queries.js';
import type { SavedFarm } from '../../api/queries.js';
import { Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { Folded } from '../../shell/folded.js';
import { Section } from '../../shell/section.js';

/** Where the feed money of the last year went, out of its receipts, and what to do otherwise. */
export function SpentPart({ farm }: { farm: SavedFarm }) {
  const { data } = useFeedSpent(farm.id);
  if (!data) return null;
  const to = `/farm/${farm.id}/feed/receipts`;
  if (!data.spent)
    return (
      <Section title="Where last year’s money went">
        <Text mb="sm">
          Type the receipts of the last twelve months, and this says where the money went and what
          to do otherwise.
        </Text>
        <Button component={Link} href={to} variant="default" className="no-print">
          Type receipts
        </Button>
      </Section>
    );
  return <Spent spent={data.spent} farm={farm} to={to} />;
}

function Spent({ spent, farm, to }: { spent: FeedSpent; farm: SavedFarm; to: string }) {
  const sayDate = useSayDate();
  const { total, receipts, from, trips, otherwise, tooOld, atListPrice, unpriced } = spent;
  const said = [...(otherwise?.ways ?? []), ...(otherwise?.all ? [otherwise.all] : [])];
  return (
    <Section title="Where last year’s money went">
      <p className="feed-lead">
        <b>
          <Num of={total} />
        </b>{' '}
        since {sayDate(from)}, on {receipts === 1 ? 'one trip' : `${receipts} trips`}
        {0 < trips.value && (
          <>
            {' '}
            that cost <Num of={trips} />
          </>
        )}
        .
      </p>
      {0 < said.length + tooOld.length ? (
        <>
          <h3>What to do otherwise</h3>
          <ul className="feed-ways">
            {said.map(({ id, said: words, saves }) => (
              <li key={id}>
                {words} <Num of={saves} said="Why" />
              </li>
            ))}
            {tooOld.map(({ name, said: words, kg }) => (
              <li key={name}>
                {words} <Num of={kg} said="Why" />
              </li>
            ))}
          </ul>
        </>
      ) : (
        otherwise && <Text mb="sm">At today’s prices no other way of buying it costs less.</Text>
      )}
      <SimpleGrid cols={{ base: 1, sm: 2 }} spacing="xl">
        <div>
          <Parts title="By feed" parts={spent.byFeed} farm={farm} />
        </div>
        <div>
          <Parts title="By who ate it" parts={spent.byEater} farm={farm} />
          <Parts title="By seller" parts={spent.bySeller} farm={farm} />
        </div>
      </SimpleGrid>
      <Folded id="spent-months" title="By month" level={3}>
        <Parts parts={spent.byMonth} farm={farm} />
      </Folded>
      {0 < atListPrice.length && (
        <Text size="sm">
          No money was told for {listed(atListPrice)} on some receipts: taken at today’s price.
        </Text>
      )}
      {0 < unpriced.length && (
        <Text size="sm">Not counted, because no price is known: {listed(unpriced)}.</Text>
      )}
      <Text size="sm" className="no-print">
        <Anchor component={Link} href={to} inherit underline="always">
          More receipts
        </Anchor>
      </Text>
    </Section>
  );
}

function Parts({
  title,
  parts,
  farm,
}: {
  readonly title?: string;
  readonly parts: readonly Part[];
  readonly farm: SavedFarm;
}) {
  return (
    <>
      {title !== undefined && <h3>{title}</h3>}
      <Table mb="md">
        <Table.Tbody>
          {parts.map(({ name, cost, amount, eachMinor }) => (
            <Table.Tr key={name}>
              <Table.Th scope="row" fw={400}>
                {name}
                {amount && (
                  <Text size="xs" c="dimmed">
                    <Num of={amount} />
                    {eachMinor !== undefined && `, ${formatMoney(eachMinor, farm.currency)} each`}
                  </Text>
                )}
              </Table.Th>
              <Table.Td ta="right">
                <Num of={cost} />
              </Table.Td>
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </>
  );
}
