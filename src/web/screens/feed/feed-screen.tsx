import './feed.css';
import { Anchor, Button, Group, Stack, Table, Text, Title } from '@mantine/core';
import { lazy, Suspense } from 'react';
import { Link } from 'wouter';
import type { FeedYear } from '../../../../shared/plan/feed-year/feed-year.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatMonth } from '../../../../shared/units/dates.js';
import { formatMoney, formatValue } from '../../../../shared/units/format.js';
import { listed } from '../../../../shared/units/listed.js';
import { useFeedYear } from '../../api/feed-queries.js';
import type { SavedFarm } from '../../api/queries.js';
import { IssueList } from '../../explain/issue-list.js';
import { Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { Empty } from '../../shell/empty.js';
import { Folded } from '../../shell/folded.js';
import { Section } from '../../shell/section.js';
import { useAll, Working } from '../../shell/states.js';
import { WideTable } from '../../shell/wide-table.js';
import { ActualPart } from './actual-part.js';
import { ApartTable } from './apart-table.js';
import { SpentPart } from './spent-part.js';
import { TripList } from './trip-list.js';

const CashChart = lazy(() => import('./cash-chart.js'));
const StoreChart = lazy(() => import('./store-chart.js'));

/** So many trips are looked at; the rest of the year is asked for. */
const NEXT_TRIPS = 2;

/** The feed of the year: what to buy on which trip, and what it costs by month. */
export default function FeedScreen({ farm, tables }: { farm: SavedFarm; tables: Tables }) {
  const all = useAll(useFeedYear(farm.id));
  if ('waiting' in all) return all.waiting;
  const [year] = all.data;
  const base = `/farm/${farm.id}`;
  const isEmpty = year.feeds.length === 0 && year.herds.length === 0;
  return (
    <Stack maw={1000}>
      <Group justify="space-between">
        <Title order={1}>Feed</Title>
        {!isEmpty && (
          <Group className="no-print" gap="xs">
            <Button component={Link} href={`${base}/feed/receipts`} variant="default">
              Type receipts
            </Button>
            <Button component={Link} href={`${base}/feed/print`} variant="default">
              Print the list
            </Button>
            <Button
              component="a"
              href={`/api/farms/${farm.id}/feed/list.csv`}
              download
              variant="default"
            >
              Spreadsheet
            </Button>
          </Group>
        )}
      </Group>
      {isEmpty ? (
        <>
          <Empty text="Nothing to feed yet. Plan a batch, and what to buy for it stands here.">
            <Button component={Link} href={`${base}/batches/new`}>
              Plan a batch
            </Button>
          </Empty>
          <SpentPart farm={farm} />
        </>
      ) : (
        <>
          <Lead year={year} />
          <IssueList issues={year.issues} tables={tables} />
          <Trips year={year} farm={farm} />
          <Money year={year} />
          <ActualPart year={year} farm={farm} />
          <SpentPart farm={farm} />
          <Store year={year} farm={farm} />
          <ByFeed year={year} />
          <Text className="no-print">
            Feeds, prices and bags in store stand under{' '}
            <Anchor component={Link} href={`${base}/place#prices`} inherit>
              Prices
            </Anchor>
            , sellers under{' '}
            <Anchor component={Link} href={`${base}/place#suppliers`} inherit>
              Where you buy
            </Anchor>
            . Or{' '}
            <Anchor component={Link} href={`${base}/feed/mix`} inherit>
              mix your own
            </Anchor>
            .
          </Text>
        </>
      )}
    </Stack>
  );
}

/** The year in one line. */
function Lead({ year }: { year: FeedYear }) {
  const sayDate = useSayDate();
  const { total, to, trips, months, leftOut } = year;
  const most = months.find(({ isMost }) => isMost);
  if (total.value === 0 && 0 < leftOut.length)
    return (
      <p className="feed-lead">
        What the feed to {sayDate(to)} costs is said once prices are typed: none is known yet of{' '}
        {listed(leftOut)}.
      </p>
    );
  return (
    <p className="feed-lead">
      <b>
        <Num of={total} />
      </b>{' '}
      for feed from today to {sayDate(to)}
      {trips.length === 0
        ? ''
        : `, on ${trips.length === 1 ? 'one trip' : `${trips.length} trips`}`}
      {leftOut.length === 0 ? '' : `, without ${listed(leftOut)}: no price is known`}.
      {most && (
        <>
          {' '}
          {formatMonth(most.month)} costs the most: <Num of={most.total} />.
        </>
      )}
    </p>
  );
}

function Trips({ year: { trips, apart }, farm }: { year: FeedYear; farm: SavedFarm }) {
  const later = trips.slice(NEXT_TRIPS);
  return (
    <>
      {0 < trips.length && (
        <Section title={trips.length === 1 ? 'Next trip' : 'Next trips'}>
          <TripList trips={trips.slice(0, NEXT_TRIPS)} farm={farm} />
        </Section>
      )}
      {0 < later.length && (
        <Folded
          id="later-trips"
          title="The rest of the year"
          answer={later.length === 1 ? 'one more trip' : `${later.length} more trips`}
        >
          <TripList trips={later} farm={farm} />
        </Folded>
      )}
      {0 < apart.length && (
        <Folded id="for-cattle" title="For the cattle, on other days" answer={apartSaid(apart)}>
          <ApartTable apart={apart} farm={farm} />
        </Folded>
      )}
    </>
  );
}

const apartSaid = (apart: FeedYear['apart']): string =>
  listed([...new Set(apart.map(({ name }) => name))]);

function Money({ year }: { year: FeedYear }) {
  const months = year.months.filter(({ total }) => 0 < total.value);
  if (months.length === 0) return null;
  return (
    <Section title="Money by month">
      <Suspense fallback={<Working label="Drawing" />}>
        <CashChart year={year} />
      </Suspense>
      <Folded id="money" title="Month by month" level={3}>
        <MonthTable year={year} />
      </Folded>
    </Section>
  );
}

const PAID = [
  ['Feed', 'feedMinor'],
  ['Trips', 'tripsMinor'],
  ['Hay', 'hayMinor'],
  ['Minerals, salt', 'mineralsMinor'],
] as const;

/** What each month is paid for. */
function MonthTable({ year: { months, currency } }: { year: FeedYear }) {
  const shown = PAID.filter(([, of]) => months.some((month) => 0 < month[of]));
  return (
    <WideTable label="Money month by month">
      <Table className="stacks">
        <Table.Thead>
          <Table.Tr>
            <Table.Th>Month</Table.Th>
            {shown.map(([name]) => (
              <Table.Th key={name} ta="right">
                {name}
              </Table.Th>
            ))}
            <Table.Th ta="right">In all</Table.Th>
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {months
            .filter(({ total }) => 0 < total.value)
            .map((each) => (
              <Table.Tr key={each.month}>
                <Table.Th scope="row" fw={400}>
                  {formatMonth(each.month)}
                  {each.isMost && ', the most'}
                </Table.Th>
                {shown.map(([name, of]) => (
                  <Table.Td key={name} data-label={name} ta="right">
                    {0 < each[of] && formatMoney(each[of], currency)}
                  </Table.Td>
                ))}
                <Table.Td data-label="In all" ta="right">
                  <Num of={each.total} />
                </Table.Td>
              </Table.Tr>
            ))}
        </Table.Tbody>
      </Table>
    </WideTable>
  );
}

function Store({ year, farm }: { year: FeedYear; farm: SavedFarm }) {
  const { most } = year.store;
  if (most.value <= 0) return null;
  return (
    <Folded
      id="feed-store"
      title="In the store"
      answer={`at most ${formatValue(most.value, 'kg', farm)}`}
      isForScreen
    >
      <Text mb="sm">
        At most <Num of={most} />.
      </Text>
      <Suspense fallback={<Working label="Drawing" />}>
        <StoreChart year={year} farm={farm} />
      </Suspense>
    </Folded>
  );
}

function ByFeed({ year: { feeds, herds } }: { year: FeedYear }) {
  return (
    <Folded id="by-feed" title="Feed by feed" answer="What each costs, and how long it lasts">
      <WideTable label="Feed by feed">
        <Table className="stacks">
          <Table.Thead>
            <Table.Tr>
              <Table.Th>Feed</Table.Th>
              <Table.Th>Eaten in the year</Table.Th>
              <Table.Th>In store</Table.Th>
              <Table.Th>Runs out</Table.Th>
              <Table.Th>To buy</Table.Th>
              <Table.Th ta="right">Cost</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {feeds.map(({ name, eatenBy, fed, inStore, runsOut, bags, cost }) => (
              <Table.Tr key={name}>
                <Table.Th scope="row" fw={400}>
                  {name}
                  <Text size="xs" c="dimmed">
                    {listed(eatenBy)}
                  </Text>
                </Table.Th>
                <Table.Td data-label="Eaten in the year">
                  <Num of={fed} />
                </Table.Td>
                <Table.Td data-label="In store">{inStore && <Num of={inStore} />}</Table.Td>
                <Table.Td data-label="Runs out">{runsOut && <Num of={runsOut} />}</Table.Td>
                <Table.Td data-label="To buy">
                  <Num of={bags} />
                </Table.Td>
                <Table.Td data-label="Cost" ta="right">
                  {cost ? <Num of={cost} /> : 'no price'}
                </Table.Td>
              </Table.Tr>
            ))}
            {herds.map(({ name, amount, cost }) => (
              <Table.Tr key={name}>
                <Table.Th scope="row" fw={400}>
                  {name}
                </Table.Th>
                <Table.Td />
                <Table.Td />
                <Table.Td />
                <Table.Td data-label="To buy">
                  <Num of={amount} />
                </Table.Td>
                <Table.Td data-label="Cost" ta="right">
                  {cost ? <Num of={cost} /> : 'no price'}
                </Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </WideTable>
    </Folded>
  );
}
