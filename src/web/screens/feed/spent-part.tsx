import { Anchor, Button, Table, Text } from '@mantine/core';
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
      {(
        [
          ['By feed', spent.byFeed],
          ['By who ate it', spent.byEater],
          ['By seller', spent.bySeller],
          ['By month', spent.byMonth],
        ] as const
      ).map(([title, parts]) => (
        <Folded
          key={title}
          id={`spent-${title.toLowerCase().replaceAll(' ', '-')}`}
          title={title}
          level={3}
          answer={title === 'By month' ? undefined : mostOf(parts, farm)}
        >
          <Parts parts={parts} farm={farm} />
        </Folded>
      ))}
      {0 < atListPrice.length && (
        <Text size="sm">
          No money was told for {listed(atListPrice)} on some receipts: taken at today’s price.
        </Text>
      )}
      {0 < unpriced.length && (
        <Text size="sm">Not counted, because no price is known: {listed(unpriced)}.</Text>
      )}
      <Text size="sm" className="no-print">
        <Anchor component={Link} href={to} inherit>
          More receipts
        </Anchor>
      </Text>
    </Section>
  );
}

/** The largest parts in a line. */
const mostOf = (parts: readonly Part[], { currency }: SavedFarm): string =>
  parts
    .slice(0, MOST_SAID)
    .map(({ name, cost }) => `${name} ${formatMoney(cost.value, currency)}`)
    .join(', ');

const MOST_SAID = 2;

function Parts({ parts, farm }: { readonly parts: readonly Part[]; readonly farm: SavedFarm }) {
  return (
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
  );
}
