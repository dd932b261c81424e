import Big from 'big.js';
import Papa from 'papaparse';
import type { FeedYear } from '../../shared/plan/feed-year/feed-year.js';
import { minorDigits, type Reader } from '../../shared/units/format.js';
import { toShown, unitLabel } from '../../shared/units/unit.js';

/**
 * The shopping list of a year of feed for a spreadsheet: a line a feed and trip, one for the trip
 * itself, and after the trips what cattle get on other days. Money is in the farm's currency with all its decimals, weights in the farm's units.
 */
export function buyingListCsv(
  { trips, apart, currency }: FeedYear,
  { units }: Pick<Reader, 'units'>,
): string {
  const money = (minor: number | undefined): string =>
    minor === undefined
      ? ''
      : new Big(minor).div(new Big(10).pow(minorDigits(currency))).toFixed(minorDigits(currency));
  const weight = (kg: number): number => Math.round(100 * toShown(kg, 'kg', units)) / 100;
  const unit = unitLabel('kg', units);
  const fields = [
    ...['Date', 'Order by', 'From', 'What', 'Bags', `One bag, ${unit}`],
    ...[`Price of one, ${currency}`, `Cost, ${currency}`, 'Lasts through'],
  ];
  const data = trips.flatMap((trip) => {
    const head = [String(trip.on.value), trip.orderOn ?? '', trip.from];
    return [
      ...trip.lines.map(({ name, bags, bagKg, each, cost, lastsThrough }) => [
        ...head,
        ...[name, bags.value, weight(bagKg), each ?? '', money(cost?.value), lastsThrough],
      ]),
      ...trip.along.map(({ name, count, kg, cost }) => [
        ...head,
        ...[name, count, weight(kg / count), '', money(cost.value), ''],
      ]),
      ...(trip.tripCost
        ? [
            [
              ...head,
              trip.comes === 'delivered' ? 'Delivery' : 'Trip',
              '',
              '',
              '',
              money(trip.tripCost.value),
              '',
            ],
          ]
        : []),
    ];
  });
  const alone = apart.map(({ on, name, count, minor }) => [
    ...[on, '', '', name, count, '', ''],
    ...[minor === 0 ? '' : money(minor), ''],
  ]);
  // A name that begins like a formula must not be one in a spreadsheet.
  return `${Papa.unparse({ fields, data: [...data, ...alone] }, { escapeFormulae: true })}\r\n`;
}
