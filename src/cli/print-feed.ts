import type { FeedTrip } from '../../shared/plan/feed-year/feed-trips.js';
import type { FeedYear } from '../../shared/plan/feed-year/feed-year.js';
import { formatDate, formatMonth } from '../../shared/units/dates.js';
import { formatPrice, formatValue, type Reader } from '../../shared/units/format.js';
import { listed } from '../../shared/units/listed.js';
import { issuesText, section, tablesFor, title } from './text.js';

/** The feed of a year as text: the sum, what to mind, a list a trip, money by month, feed by feed. */
export function printFeed(year: FeedYear, reader: Reader): string {
  const { table, show } = tablesFor(reader);
  const say = (date: string): string => formatDate(date, reader);
  const { trips, months, feeds, herds, total, to, leftOut, store } = year;
  const issues = issuesText(year);
  return [
    title(
      `Feed to ${say(to)}: ${show(total)}${leftOut.length === 0 ? '' : `, without ${listed(leftOut)}`}`,
    ),
    ...(issues === '' ? [] : ['', issues]),
    ...trips.map((trip) => section(tripTitle(trip, say), tripTable(trip, reader))),
    section(
      'Money by month',
      table(
        ['', 'Paid'],
        months
          .filter((month) => 0 < month.total.value)
          .map((month) => [formatMonth(month.month), month.total]),
      ),
    ),
    section(
      `Feed by feed; at most ${show(store.most)} in the store`,
      table(
        ['', 'Eaten', 'In store', 'Runs out', 'To buy', 'Cost'],
        [
          ...feeds.map(({ name, fed, inStore, runsOut, bags, cost }) => [
            ...[name, fed, inStore, runsOut, bags, cost],
          ]),
          ...herds.map(({ name, amount, cost }) => [
            ...[name, undefined, undefined, undefined, amount, cost],
          ]),
        ],
      ),
    ),
  ].join('\n');
}

const tripTitle = ({ on, from, orderOn }: FeedTrip, say: (date: string) => string): string =>
  `${say(String(on.value))}  ${from}${orderOn === undefined ? '' : `, order by ${say(orderOn)}`}`;

function tripTable({ lines, tripCost, kg, total, comes }: FeedTrip, reader: Reader): string {
  const { table } = tablesFor(reader);
  return table(
    ['', 'Bags', 'One bag', 'Enough to', 'Cost'],
    [
      ...lines.map(({ name, bags, bagKg, each, cost, lastsThrough }) => [
        name,
        bags.value,
        `${formatValue(bagKg, 'kg', reader)}${each === undefined ? '' : ` at ${formatPrice(each, reader.currency)}`}`,
        formatDate(lastsThrough, reader),
        cost,
      ]),
      ...(tripCost
        ? [[comes === 'delivered' ? 'The delivery' : 'The trip', '', '', '', tripCost]]
        : []),
      ['In all', '', kg, '', total],
    ],
  );
}
