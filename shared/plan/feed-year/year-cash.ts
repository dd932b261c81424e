import { monthOf, yearOf, type PlainDate } from '../../calendar/plain-date.js';
import { input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import type { FeedTrip } from './feed-trips.js';
import { feedYearFormulas } from './feed-year-formulas.js';
import type { HerdPurchase } from './herd-costs.js';

/** What is paid for feed in one month. */
export interface CashMonth {
  /** Its first day. */
  readonly month: PlainDate;
  readonly feedMinor: number;
  readonly tripsMinor: number;
  readonly hayMinor: number;
  readonly mineralsMinor: number;
  readonly total: NumberQuantity;
  /** The dearest of the year; the first of equals. */
  readonly isMost?: boolean;
}

interface Paid {
  readonly on: PlainDate;
  readonly what: 'feedMinor' | 'tripsMinor' | 'hayMinor' | 'mineralsMinor';
  readonly minor: number;
}

const MONTHS = 13;

/** The money of the trips and of what herds are bought, by month from this one on. */
export function cashByMonth(
  today: PlainDate,
  trips: readonly FeedTrip[],
  herds: readonly HerdPurchase[],
): CashMonth[] {
  const paid: Paid[] = [
    ...trips.flatMap(({ on, lines, tripCost }): Paid[] => [
      ...lines.map(({ cost }) => ({
        ...{ on: String(on.value), what: 'feedMinor' as const, minor: cost?.value ?? 0 },
      })),
      { on: String(on.value), what: 'tripsMinor', minor: tripCost?.value ?? 0 },
    ]),
    ...herds.flatMap(({ kind, paid: all }) =>
      all.map(({ on, minor }): Paid => ({
        ...{ on, minor, what: kind === 'hay' ? 'hayMinor' : 'mineralsMinor' },
      })),
    ),
  ];
  const months = Array.from({ length: MONTHS }, (_, k) => monthAfter(today, k)).map((month) => {
    const mine = paid.filter(({ on }) => on.slice(0, 7) === month.slice(0, 7));
    const of = (what: Paid['what']): number =>
      mine.reduce((sum, each) => sum + (each.what === what ? each.minor : 0), 0);
    const parts = {
      feedMinor: of('feedMinor'),
      tripsMinor: of('tripsMinor'),
      hayMinor: of('hayMinor'),
      mineralsMinor: of('mineralsMinor'),
    };
    const { feedMinor, tripsMinor, hayMinor, mineralsMinor } = parts;
    return {
      month,
      ...parts,
      total: quantity(
        'Paid in the month',
        feedMinor + tripsMinor + hayMinor + mineralsMinor,
        'money',
        feedYearFormulas.sum,
        [
          input('Feed', feedMinor, 'money'),
          input('Trips', tripsMinor, 'money'),
          input('Hay', hayMinor, 'money'),
          input('Minerals and salt', mineralsMinor, 'money'),
        ],
      ),
    };
  });
  const most = Math.max(...months.map(({ total }) => total.value));
  const dearest = months.findIndex(({ total }) => total.value === most);
  return months.map((each, k) => (k === dearest && 0 < most ? { ...each, isMost: true } : each));
}

function monthAfter(today: PlainDate, count: number): PlainDate {
  const months = 12 * yearOf(today) + monthOf(today) - 1 + count;
  return `${Math.floor(months / 12)}-${`${(months % 12) + 1}`.padStart(2, '0')}-01`;
}
