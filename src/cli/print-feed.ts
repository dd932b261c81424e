import type { FeedActualYear } from '../../shared/plan/feed-year/feed-actual-year.js';
import type { FeedTrip } from '../../shared/plan/feed-year/feed-trips.js';
import type { FeedYear } from '../../shared/plan/feed-year/feed-year.js';
import { formatDate, formatMonth } from '../../shared/units/dates.js';
import { formatMoney, formatPrice, formatValue, type Reader } from '../../shared/units/format.js';
import { listed } from '../../shared/units/listed.js';
import { issuesText, section, tablesFor, title } from './text.js';

/** The feed of a year as text: the sum, what to mind, a list a trip, money by month, feed by feed. */
export function printFeed(year: FeedYear, reader: Reader): string {
  const { table, show } = tablesFor(reader);
  const say = (date: string): string => formatDate(date, reader);
  const { trips, apart, months, feeds, herds, total, to, leftOut, store, actualOfAll } = year;
  const issues = issuesText(year);
  return [
    title(
      `Feed to ${say(to)}: ${show(total)}${leftOut.length === 0 ? '' : `, without ${listed(leftOut)}`}`,
    ),
    ...(issues === '' ? [] : ['', issues]),
    ...trips.map((trip) => section(tripTitle(trip, say), tripTable(trip, reader))),
    ...(apart.length === 0
      ? []
      : [
          section(
            'For the cattle, on other days',
            table(
              ['', '', 'How many', 'Cost'],
              apart.map(({ on, name, count, minor }) => [
                ...[say(on), name, count],
                minor === 0 ? 'no price' : formatMoney(minor, reader.currency),
              ]),
            ),
          ),
        ]),
    section('Money by month', cashTable(months, reader)),
    ...(actualOfAll ? [section('Beside the plan', actualTable(actualOfAll, reader))] : []),
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

/** Each month with what it is paid for; kinds that nothing is paid for are left out. */
function cashTable(months: FeedYear['months'], reader: Reader): string {
  const kinds = [
    ['Feed', 'feedMinor'],
    ['Trips', 'tripsMinor'],
    ['Hay', 'hayMinor'],
    ['Minerals, salt', 'mineralsMinor'],
  ] as const;
  const shown = kinds.filter(([, of]) => months.some((month) => 0 < month[of]));
  return tablesFor(reader).table(
    ['', ...shown.map(([name]) => name), 'In all', ''],
    months
      .filter(({ total }) => 0 < total.value)
      .map((each) => [
        formatMonth(each.month),
        ...shown.map(([, of]) => (each[of] === 0 ? '' : formatMoney(each[of], reader.currency))),
        each.total,
        each.isMost ? 'the most' : '',
      ]),
  );
}

/** Why the feed of all batches cost more or less than planned, and what is still to come. */
function actualTable(all: FeedActualYear, reader: Reader): string {
  const { planned, heads, intake, waste, price, actual, toCome } = all;
  return tablesFor(reader).table(
    ['', ''],
    [
      ...[planned, heads, intake, waste, price, actual],
      ...(toCome ? [toCome.planned, toCome.now] : []),
    ].map((each) => [each.label, each]),
  );
}

const tripTitle = ({ on, from, orderOn }: FeedTrip, say: (date: string) => string): string =>
  `${say(String(on.value))}  ${from}${orderOn === undefined ? '' : `, order by ${say(orderOn)}`}`;

function tripTable({ lines, along, tripCost, kg, total, comes }: FeedTrip, reader: Reader): string {
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
      ...along.map(({ name, count, kg: weight, cost }) => [
        ...[name, count, formatValue(weight / count, 'kg', reader), '', cost],
      ]),
      ...(tripCost
        ? [[comes === 'delivered' ? 'The delivery' : 'The trip', '', '', '', tripCost]]
        : []),
      ['In all', '', kg, '', total],
    ],
  );
}
