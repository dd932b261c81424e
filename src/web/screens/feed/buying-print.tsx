import './feed.css';
import { Button, Group, Text, Title } from '@mantine/core';
import { Link } from 'wouter';
import { dayInWork } from '../../../../shared/plan/feed-year/trip-in-work.js';
import { formatPrice, formatValue } from '../../../../shared/units/format.js';
import { useFeedYear } from '../../api/feed-queries.js';
import type { SavedFarm } from '../../api/queries.js';
import { useWork } from '../../api/work-queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { useAll } from '../../shell/states.js';
import { ApartTable } from './apart-table.js';

/** What to buy, trip by trip, on paper, with a box to tick for each. */
export default function BuyingPrint({ farm }: { farm: SavedFarm }) {
  const sayDate = useSayDate();
  const { data: work } = useWork(farm.id);
  const all = useAll(useFeedYear(farm.id));
  if ('waiting' in all) return all.waiting;
  const [{ trips, apart, to, total }] = all.data;
  return (
    <main className="feed-paper">
      <Group className="no-print" mb="md">
        <Button onClick={() => window.print()}>Print</Button>
        <Button component={Link} href={`/farm/${farm.id}/feed`} variant="default">
          Back to feed
        </Button>
      </Group>
      <Title order={1}>Feed to buy</Title>
      <Text>
        {farm.name}, to {sayDate(to)}. All feed of the year:{' '}
        {formatValue(total.value, 'money', farm)}.
      </Text>
      {trips.map(({ on, from, comes, orderOn, lines, along, kg, tripCost, total: sum }) => (
        <section key={`${on.value} ${from}`} className="feed-paper-trip">
          <h2>
            {sayDate((work && dayInWork({ on, from }, work.jobs)) ?? String(on.value))}, {from}
            {comes === 'delivered' && ' delivers'}
          </h2>
          {orderOn !== undefined && <p>☐ Order by {sayDate(orderOn)}</p>}
          <table className="feed-lines">
            <tbody>
              {lines.map(({ name, bags, bagKg, each, cost, lastsThrough }) => (
                <tr key={name}>
                  <td className="feed-bags">☐ {bags.value} ×</td>
                  <th scope="row">
                    <span className="feed-name">{name}</span>
                    <small>
                      {formatValue(bagKg, 'kg', farm)}
                      {each === undefined ? '' : ` at ${formatPrice(each, farm.currency)}`}, enough
                      to {sayDate(lastsThrough)}
                    </small>
                  </th>
                  <td>{cost && formatValue(cost.value, 'money', farm)}</td>
                </tr>
              ))}
              {along.map(({ name, count, kg: weight, cost }) => (
                <tr key={name}>
                  <td className="feed-bags">☐ {count} ×</td>
                  <th scope="row">
                    <span className="feed-name">{name}</span>
                    <small>{formatValue(weight / count, 'kg', farm)}, for the cattle</small>
                  </th>
                  <td>{formatValue(cost.value, 'money', farm)}</td>
                </tr>
              ))}
            </tbody>
            <tfoot>
              <tr>
                <td />
                <th scope="row">
                  In all, {formatValue(kg.value, 'kg', farm)}
                  {tripCost && `, with ${formatValue(tripCost.value, 'money', farm)} for the trip`}
                </th>
                <td>{sum && formatValue(sum.value, 'money', farm)}</td>
              </tr>
            </tfoot>
          </table>
        </section>
      ))}
      {0 < apart.length && (
        <section className="feed-paper-trip">
          <h2>For the cattle, on other days</h2>
          <ApartTable apart={apart} farm={farm} isToTick />
        </section>
      )}
    </main>
  );
}
