import { addDays, daysBetween } from '../../calendar/plain-date.js';
import { from, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { FeedProduct } from '../../farm/product.js';
import { formatValue, type Reader } from '../../units/format.js';
import type { Unit } from '../../units/unit.js';
import {
  asMadeMinor,
  boughtOtherwise,
  sellersOf,
  type BoughtOtherwise,
  type Span,
} from './bought-otherwise.js';
import { feedSpentFormulas } from './feed-spent-formulas.js';
import type { SpentFeed } from './needs-of-receipts.js';
import type { ReceiptTrip } from './receipt-lines.js';

/** A way to buy the same feed for less, worked out by the same engine as the plan of buying. */
export interface WayToSpendLess {
  readonly id: string;
  readonly said: string;
  readonly saves: NumberQuantity;
}

/** What buying otherwise would have saved, the most first; `all` is every way at once. */
export interface WaysToSpendLess {
  readonly ways: readonly WayToSpendLess[];
  readonly all?: WayToSpendLess;
  /** The same at today's prices, which all of them are set against. */
  readonly asMade: NumberQuantity;
}

interface Asked {
  readonly feeds: readonly SpentFeed[];
  readonly trips: readonly ReceiptTrip[];
  readonly span: Span;
}

/** A saving below this share of what was bought is not worth a word. */
const LEAST_SHARE = 0.005;

export function waysToSpendLess(
  picture: FarmPicture,
  { feeds, trips, span }: Asked,
): WaysToSpendLess {
  const { currency } = picture.farm;
  const reader: Reader = { ...picture.farm, today: picture.today };
  const say = (value: number, unit: Unit): string => formatValue(value, unit, reader);
  const names = new Map((picture.suppliers ?? []).map(({ id, name }) => [id, name]));
  const nameOf = ({ supplierId }: FeedProduct): string | undefined =>
    supplierId === undefined ? undefined : names.get(supplierId);
  const sellers = sellersOf(picture, trips, span);
  const buy = (alsoFor: (feed: SpentFeed) => readonly FeedProduct[]): BoughtOtherwise =>
    boughtOtherwise(feeds, sellers, alsoFor, { span, currency }, nameOf);
  const made = trips.filter(({ lines }) =>
    lines.some(({ name }) => feeds.some((feed) => feed.name === name)),
  );
  const asMade = quantity(
    'What you bought, at today’s prices',
    asMadeMinor(feeds, trips, currency),
    'money',
    feedSpentFormulas.listed,
    [input('Trips', made.length, 'count')],
  );
  const savedBy = (label: string, before: number, after: BoughtOtherwise): NumberQuantity =>
    quantity(label, before - after.minor, 'money', feedSpentFormulas.saved, [
      from(asMade, 'C₀'),
      from(
        quantity(label, after.minor, 'money', feedSpentFormulas.otherwise, [
          input('Trips', after.trips, 'count'),
        ]),
        'C₁',
      ),
    ]);
  const least = LEAST_SHARE * asMade.value;
  const isWorth = ({ saves }: WayToSpendLess): boolean => least < saves.value;
  const better = buy(() => []);
  const saved = savedBy('Other days and quantities', asMade.value, better);
  const otherTrips: WayToSpendLess = {
    id: 'trips',
    saves: saved,
    said: tripsSaid(made.length, better.trips, say(saved.value, 'money')),
  };
  const others = feeds.flatMap((feed) => {
    const also = othersFor(feed, picture);
    if (also.length === 0) return [];
    const with1 = buy((each) => (each === feed ? also : []));
    const item = feeds.indexOf(feed);
    const taken = mostTaken(with1, item, also);
    if (!taken) return [];
    const saves = savedBy(`${taken.name} for ${feed.name}`, better.minor, with1);
    return [
      {
        id: `switch ${feed.name}`,
        saves,
        said: `${switchSaid(feed, taken, nameOf(taken), say)}: ${say(saves.value, 'money')} less.`,
      },
    ];
  });
  const ways = [otherTrips, ...others].filter(isWorth);
  ways.sort((a, b) => b.saves.value - a.saves.value);
  if (ways.length < 2) return { ways, asMade };
  const all = buy((feed) => othersFor(feed, picture));
  const saves = savedBy('All of it together', asMade.value, all);
  return {
    ...{ ways, asMade },
    all: {
      ...{ id: 'all', saves },
      said: `All of it together: ${say(saves.value, 'money')} less, on ${count(all.trips, 'trip')}.`,
    },
  };
}

const count = (n: number, one: string): string => (n === 1 ? `one ${one}` : `${n} ${one}s`);

const tripsSaid = (were: number, would: number, money: string): string =>
  would < were
    ? `You went ${were === 1 ? 'once' : `${were} times`} for feed in bags. ${would === 1 ? 'One trip' : `${would} trips`} would have done for the same feed: ${money} less, with larger quantities where they are cheaper.`
    : `The same feed from the same sellers, on other days or more at once: ${money} less.`;

function switchSaid(
  feed: SpentFeed,
  taken: FeedProduct,
  seller: string | undefined,
  say: (value: number, unit: Unit) => string,
): string {
  const [{ eachKg, from: was }] = feed.lines as [SpentFeed['lines'][number]];
  if (taken.name === feed.name || was === seller)
    return eachKg < taken.bagKg
      ? `${taken.name} in the bag of ${say(taken.bagKg, 'kg')} in place of ${feed.name}`
      : `${taken.name} in place of ${feed.name}`;
  return `${taken.name}${seller === undefined ? '' : ` from ${seller}`} in place of ${feed.name}${was === undefined ? '' : ` from ${was}`}`;
}

/** Feeds of the place that serve the same birds as one that was bought, never medicated ones. */
function othersFor({ product, name }: SpentFeed, { products }: FarmPicture): FeedProduct[] {
  if (!product) return [];
  const key = servesKey(product);
  return products.filter(
    (each): each is FeedProduct =>
      each.kind === 'feed' &&
      each.id !== product.id &&
      each.name !== name &&
      each.withdrawalDays === undefined &&
      servesKey(each) === key,
  );
}

const servesKey = ({ phaseIds, feedFor }: FeedProduct): string =>
  `${feedFor ?? 'both'} ${[...phaseIds].sort().join(' ')}`;

/** The other feed that is bought most of in a feed's place; undefined where none is. */
function mostTaken(
  { plan, problem }: BoughtOtherwise,
  item: number,
  also: readonly FeedProduct[],
): FeedProduct | undefined {
  const own = problem.items[item]!.offers.length - also.length;
  const kg = also.map((_, k) =>
    plan.purchases
      .filter((bought) => bought.item === item && bought.offer === own + k)
      .reduce((sum, { bags, offer }) => sum + bags * problem.items[item]!.offers[offer]!.bagKg, 0),
  );
  const most = Math.max(...kg);
  return most <= 0 ? undefined : also[kg.indexOf(most)];
}

/** Feed that lay longer than it keeps, where the plans of the batches say when it was eaten. */
export interface OutlivedStore {
  readonly name: string;
  readonly kg: NumberQuantity;
  readonly said: string;
}

export function outlivedStore(
  picture: FarmPicture,
  { feeds, span }: Pick<Asked, 'feeds' | 'span'>,
): OutlivedStore[] {
  const reader: Reader = { ...picture.farm, today: picture.today };
  return feeds.flatMap((feed) => {
    if (!feed.isByPlan) return [];
    const { name, lines, needKg, product } = feed;
    const keepsDays = product?.keepsDays ?? span.maxDays;
    const eatenBy = (day: number): number =>
      needKg.slice(0, Math.max(0, day)).reduce((sum, kg) => sum + kg, 0);
    let boughtKg = 0;
    let oldKg = 0;
    for (const { on, amount, eachKg } of lines) {
      const lotKg = amount * eachKg;
      boughtKg += lotKg;
      const end = daysBetween(span.from, addDays(on, keepsDays)) + 1;
      // What is not eaten by today yet says nothing.
      if (end <= span.days) oldKg += Math.min(lotKg, Math.max(0, boughtKg - eatenBy(end)));
    }
    const bagKg = lines[0]!.eachKg;
    if (oldKg < bagKg / 2) return [];
    const kg = quantity(`${name}, too old`, oldKg, 'kg', feedSpentFormulas.stale, [
      input('Keeps', keepsDays, 'day'),
      input('Bought', boughtKg, 'kg'),
    ]);
    const bags = Math.round(oldKg / bagKg);
    return [
      {
        ...{ name, kg },
        said: `About ${count(bags, 'bag')} of ${name} (${formatValue(oldKg, 'kg', reader)}) lay longer than ${keepsDays} days before they were eaten.`,
      },
    ];
  });
}
