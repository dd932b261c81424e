import { addDays, daysBetween, weekdayOf, type PlainDate } from '../../calendar/plain-date.js';
import type {
  BuyingPlan,
  BuyingProblem,
  Offer,
  SupplierDays,
} from '../../buying/buying-problem.js';
import { planBuying } from '../../buying/plan-buying.js';
import { bagPrice } from '../../farm/feed-product.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { FeedProduct } from '../../farm/product.js';
import { costMinor } from '../../money/money.js';
import type { SpentFeed } from './needs-of-receipts.js';
import { eachPaid, type ReceiptTrip } from './receipt-lines.js';

/** What the same feed costs when it is bought in some other way. */
export interface BoughtOtherwise {
  /** Feed and trips, smallest coins. */
  readonly minor: number;
  readonly trips: number;
  readonly problem: BuyingProblem;
  readonly plan: BuyingPlan;
}

export interface Seller {
  readonly name: string | undefined;
  readonly tripMinor: number;
  readonly days: SupplierDays;
}

/** The sellers of the receipts and of the feeds that could be bought, with the days they are open. */
export function sellersOf(
  { suppliers = [], products, farm }: FarmPicture,
  trips: readonly ReceiptTrip[],
  { from, days, hourMinor, tripH }: Span,
): Seller[] {
  const trip = products.find(({ kind }) => kind === 'trip')?.price;
  const known = suppliers.map((supplier): Seller => {
    const isDelivered = supplier.comes === 'delivered';
    const price = supplier.tripCost ?? (isDelivered ? undefined : trip);
    const tripMinor = price === undefined ? 0 : costMinor(price, 1, farm.currency);
    const hours = isDelivered ? 0 : (supplier.tripH ?? tripH);
    return sellerOf(supplier.name, tripMinor, hours, supplier.openWeekdays);
  });
  const named = new Set(known.map(({ name }) => name));
  const others = [...new Set(trips.map((each) => each.from))].filter((name) => !named.has(name));
  const usual = trip === undefined ? 0 : costMinor(trip, 1, farm.currency);
  return [...known, ...others.map((name) => sellerOf(name, usual, tripH))];

  function sellerOf(
    name: string | undefined,
    tripMinor: number,
    hours: number,
    open?: readonly number[],
  ): Seller {
    const days01 = Uint8Array.from({ length: days }, (_, day) =>
      (open?.includes(weekdayOf(addDays(from, day))) ?? true) ? 1 : 0,
    );
    // Somebody was there on those days, whatever its hours are now.
    for (const each of trips) if (each.from === name) days01[daysBetween(from, each.on)] = 1;
    return {
      ...{ name, tripMinor },
      days: { tripCost: tripMinor + Math.round(hours * hourMinor), days: days01 },
    };
  }
}

export interface Span {
  readonly from: PlainDate;
  readonly days: number;
  readonly maxDays: number;
  readonly storeKg: number;
  /** What an hour on the road counts in the choice of trips, smallest coins; it is in no bill. */
  readonly hourMinor: number;
  readonly tripH: number;
}

/** Sets of trips that are costed: receipts have few. */
const TRIES = 300;

/**
 * The feeds of the receipts bought at least cost.
 *
 * @param alsoFor other products that may be bought in place of a feed
 */
export function boughtOtherwise(
  feeds: readonly SpentFeed[],
  sellers: readonly Seller[],
  alsoFor: (feed: SpentFeed) => readonly FeedProduct[],
  { span, currency }: { readonly span: Span; readonly currency: string },
  ofProducts: (product: FeedProduct) => string | undefined,
): BoughtOtherwise {
  const { days, storeKg, maxDays } = span;
  const at = (name: string | undefined): number =>
    Math.max(
      0,
      sellers.findIndex((each) => each.name === name),
    );
  const problem: BuyingProblem = {
    ...{ days, storeKg, handDays: 0 },
    suppliers: sellers.map((each) => each.days),
    items: feeds.map((feed) => ({
      needKg: feed.needKg,
      stock: [],
      offers: [
        ...asBought(feed).map(({ from }): Offer => ({
          supplier: at(from),
          bagKg: feed.lines[0]!.eachKg,
          keepsDays: feed.product?.keepsDays ?? maxDays,
          breaks: feed.product?.priceBreaks?.map(({ fromBags }) => fromBags) ?? [],
          costOf: (bags) => listedMinor(feed, bags, currency),
        })),
        ...alsoFor(feed).map((product): Offer => ({
          supplier: at(ofProducts(product)),
          bagKg: product.bagKg,
          keepsDays: product.keepsDays ?? maxDays,
          breaks: product.priceBreaks?.map(({ fromBags }) => fromBags) ?? [],
          costOf: (bags) => costMinor(bagPrice(product, bags), bags, currency),
        })),
      ],
    })),
  };
  const plan = planBuying(problem, TRIES);
  const tripsMinor = plan.trips.reduce(
    (sum, { supplier }) => sum + sellers[supplier]!.tripMinor,
    0,
  );
  return { minor: plan.feedCost + tripsMinor, trips: plan.trips.length, problem, plan };
}

/** The sellers that a feed was bought from, once each. */
function asBought({ lines }: SpentFeed): SpentFeed['lines'] {
  return lines.filter((line, k) => lines.findIndex(({ from }) => from === line.from) === k);
}

/** So many bags by today's price list; a feed that is not on it at what was paid on average. */
export function listedMinor({ product, lines }: SpentFeed, bags: number, currency: string): number {
  if (product) return costMinor(bagPrice(product, bags), bags, currency);
  const all = lines.reduce(
    (sum, { minor, amount }) => ({ minor: sum.minor + minor, amount: sum.amount + amount }),
    { minor: 0, amount: 0 },
  );
  return costMinor(eachPaid({ ...lines[0]!, ...all }, currency), bags, currency);
}

/** What was bought on the trips that were made, at today's prices, smallest coins. */
export function asMadeMinor(
  feeds: readonly SpentFeed[],
  trips: readonly ReceiptTrip[],
  currency: string,
): number {
  let sum = trips
    .filter(({ lines }) => lines.some(({ name }) => feeds.some((feed) => feed.name === name)))
    .reduce((all, { minor }) => all + minor, 0);
  for (const feed of feeds) {
    const byTrip = new Map<string, number>();
    for (const { on, from, amount } of feed.lines) {
      const key = `${on} ${from ?? ''}`;
      byTrip.set(key, (byTrip.get(key) ?? 0) + amount);
    }
    for (const bags of byTrip.values()) sum += listedMinor(feed, bags, currency);
  }
  return sum;
}
