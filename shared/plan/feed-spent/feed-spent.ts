import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Formula } from '../../explain/formula.js';
import { fromFarm, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { FeedProduct } from '../../farm/product.js';
import type { FactOf } from '../../farm/told-fact.js';
import { costMinor } from '../../money/money.js';
import { sharedOut } from '../../money/shared-out.js';
import type { Tables } from '../../tables/tables.js';
import { formatMonth } from '../../units/dates.js';
import { feedClasses, type FeedClass } from '../feed-year/feed-classes.js';
import type { FedAnimals } from '../feed-year/feed-animals.js';
import { storeOf } from '../feed-year/year-buying.js';
import { feedSpentFormulas } from './feed-spent-formulas.js';
import { needsOfReceipts } from './needs-of-receipts.js';
import { receiptLines, receiptTrips, type ReceiptLine, type ReceiptTrip } from './receipt-lines.js';
import {
  outlivedStore,
  waysToSpendLess,
  type OutlivedStore,
  type WaysToSpendLess,
} from './ways-to-spend-less.js';

/** A part of what was paid: of a feed, an eater, a seller or a month. */
export interface SpentPart {
  readonly name: string;
  readonly cost: NumberQuantity;
  /** Bags or bales, where the part is one feed. */
  readonly amount?: NumberQuantity;
  /** Paid for one on average, smallest coins. */
  readonly eachMinor?: number;
}

/** Where the feed money of the last year went, out of the receipts that were told. */
export interface FeedSpent {
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly currency: string;
  readonly total: NumberQuantity;
  readonly trips: NumberQuantity;
  readonly receipts: number;
  /** Each of these adds up to the total. */
  readonly byFeed: readonly SpentPart[];
  readonly byEater: readonly SpentPart[];
  readonly bySeller: readonly SpentPart[];
  readonly byMonth: readonly SpentPart[];
  readonly otherwise?: WaysToSpendLess;
  readonly tooOld: readonly OutlivedStore[];
  /** Names of feeds whose money nobody told: taken at today's price, or not known at all. */
  readonly atListPrice: readonly string[];
  readonly unpriced: readonly string[];
}

/**
 * Where the money for feed went in the year up to today, and how the same feed could have been
 * bought for less; undefined where no receipt was told.
 *
 * @param bought what was told as bought, of the whole farm
 */
export function feedSpent(
  picture: FarmPicture,
  tables: Tables,
  plans: FedAnimals,
  bought: readonly FactOf<'bought'>[],
): FeedSpent | undefined {
  const lines = receiptLines(picture, bought);
  const [first] = lines;
  if (!first) return undefined;
  const { today, farm } = picture;
  const { currency } = farm;
  const trips = receiptTrips(picture, lines);
  const days = daysBetween(first.on, today) + 1;
  const classes = feedClasses(picture, plans.batches, {
    from: first.on,
    until: addDays(today, 1),
  });
  const tripsMinor = trips.reduce((sum, { minor }) => sum + minor, 0);
  const all = lines.reduce((sum, { minor }) => sum + minor, tripsMinor);
  const { buying } = tables.judgements;
  const span = {
    ...{ from: first.on, days, maxDays: tables.feedKeeping.maxDays },
    storeKg: storeOf(picture),
    hourMinor: Math.round(buying.tripHourBags.value * usualBagMinor(picture, lines)),
    tripH: buying.tripH.value,
  };
  const feeds = needsOfReceipts(lines, classes, span);
  const asked = { feeds, trips, span };
  const named = (isMeant: (line: ReceiptLine) => boolean): string[] => [
    ...new Set(lines.filter(isMeant).map(({ name }) => name)),
  ];
  return {
    ...{ from: first.on, to: today, currency, receipts: trips.length },
    total: paid('Feed of the year, as told', all),
    trips: quantity('Trips', tripsMinor, 'money', feedSpentFormulas.paid, [
      input('Trips', trips.length, 'count'),
    ]),
    byFeed: byFeed(lines, tripsMinor),
    byEater: byEater(picture, { lines, trips, classes, from: first.on }, plans),
    bySeller: parts(
      trips.map((trip) => [trip.from ?? 'Nobody said where', moneyOf(trip)]),
      largest,
    ),
    byMonth: parts(
      trips.map((trip) => [trip.on.slice(0, 7), moneyOf(trip)]),
      (a, b) => (a[0] < b[0] ? -1 : 1),
    ).map((part) => ({ ...part, name: formatMonth(`${part.name}-01`) })),
    ...(feeds.length === 0 ? {} : { otherwise: waysToSpendLess(picture, asked) }),
    tooOld: outlivedStore(picture, asked),
    atListPrice: named(({ isListPrice }) => isListPrice === true),
    unpriced: named(({ isUnpriced }) => isUnpriced === true),
  };
}

const moneyOf = ({ lines, minor }: ReceiptTrip): number =>
  lines.reduce((sum, line) => sum + line.minor, minor);

const paid = (
  label: string,
  minor: number,
  formula: Formula = feedSpentFormulas.paid,
): NumberQuantity => quantity(label, minor, 'money', formula, [input('Receipts', minor, 'money')]);

type Named = readonly [string, number];
const largest = (a: Named, b: Named): number => b[1] - a[1];

/** Money added up by name. */
function parts(
  all: readonly Named[],
  order: (a: Named, b: Named) => number,
  formula?: Formula,
): SpentPart[] {
  const sums = new Map<string, number>();
  for (const [name, minor] of all) sums.set(name, (sums.get(name) ?? 0) + minor);
  return [...sums].sort(order).map(([name, minor]) => ({ name, cost: paid(name, minor, formula) }));
}

function byFeed(lines: readonly ReceiptLine[], tripsMinor: number): SpentPart[] {
  const byName = new Map<string, ReceiptLine[]>();
  for (const line of lines) byName.set(line.name, [...(byName.get(line.name) ?? []), line]);
  const feeds = [...byName].map(([name, mine]): SpentPart => {
    const minor = mine.reduce((sum, line) => sum + line.minor, 0);
    const count = mine.reduce((sum, { amount }) => sum + amount, 0);
    const unit = mine[0]!.what === 'hay' ? 'bales' : 'bags';
    return {
      name,
      cost: paid(name, minor),
      amount: quantity(
        name,
        count,
        unit,
        feedSpentFormulas.bags,
        mine.map(({ on, amount }) => fromFarm(on, amount, unit)),
      ),
      eachMinor: Math.round(minor / count),
    };
  });
  feeds.sort((a, b) => b.cost.value - a.cost.value);
  return tripsMinor === 0 ? feeds : [...feeds, { name: 'Trips', cost: paid('Trips', tripsMinor) }];
}

interface Eaten {
  readonly lines: readonly ReceiptLine[];
  readonly trips: readonly ReceiptTrip[];
  readonly classes: readonly FeedClass[];
  readonly from: PlainDate;
}

/** Who ate what no batch of the plans did: those of last year that nobody planned here. */
const OTHERS = {
  meat: 'Meat birds not under Batches',
  layers: 'Hens not under Batches',
  both: 'Birds not under Batches',
} as const;
const CATTLE = 'Cattle';

/** Each line to those who ate of it, each trip by the money that its lines went to. */
function byEater({ herds }: FarmPicture, eaten: Eaten, { batches }: FedAnimals): SpentPart[] {
  const names = new Map(batches.map(({ id, name }) => [id, name]));
  const cattle = herds.length === 0 ? CATTLE : herds.map(({ name }) => name).join(', ');
  const all: Named[] = [];
  for (const trip of eaten.trips) {
    const ofTrip = new Map<string, number>();
    for (const line of trip.lines) {
      const eaters: (readonly [string, number])[] =
        line.what === 'feed'
          ? eatersOf(line, eaten).map(([id, kg]) => [names.get(id) ?? othersOf(line), kg] as const)
          : [[cattle, 1]];
      const [ids, weights] = [eaters.map(([name]) => name), eaters.map(([, kg]) => kg)];
      sharedOut(line.minor, weights).forEach((minor, k) => {
        all.push([ids[k]!, minor]);
        ofTrip.set(ids[k]!, (ofTrip.get(ids[k]!) ?? 0) + minor);
      });
    }
    const bearers = [...ofTrip];
    sharedOut(
      trip.minor,
      bearers.map(([, minor]) => minor || 1),
    ).forEach((minor, k) => all.push([bearers[k]![0], minor]));
  }
  return parts(all, largest, feedSpentFormulas.eaten);
}

const othersOf = ({ product }: ReceiptLine): string =>
  OTHERS[(product?.kind === 'feed' ? product.feedFor : undefined) ?? 'both'];

/** Who ate of a feed from a purchase until the next of it, kg by batch; nobody planned is one eater. */
function eatersOf(line: ReceiptLine, { lines, classes, from }: Eaten): [string, number][] {
  const day = daysBetween(from, line.on);
  const next = lines.find(({ on, name }) => name === line.name && line.on < on);
  const of = classes.filter(({ feeds }) => feeds.some(({ id }) => id === line.product?.id));
  const between = (until?: number): [string, number][] =>
    of.flatMap(({ kgOf }) =>
      [...kgOf].flatMap(([id, kg]): [string, number][] => {
        const sum = kg.slice(day, until).reduce((all, each) => all + each, 0);
        return 0 < sum ? [[id, sum]] : [];
      }),
    );
  const then = between(next && daysBetween(from, next.on));
  return 0 < then.length ? then : [['', 1]];
}

/** A usual bag, smallest coins: what an hour on the road is measured by. */
function usualBagMinor({ products, farm }: FarmPicture, lines: readonly ReceiptLine[]): number {
  const feeds = products.filter((each): each is FeedProduct => each.kind === 'feed');
  const prices =
    0 < feeds.length
      ? feeds.map(({ price }) => costMinor(price, 1, farm.currency))
      : lines.map(({ minor, amount }) => minor / amount);
  return prices.reduce((sum, each) => sum + each, 0) / prices.length;
}
