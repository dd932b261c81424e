import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type {
  BuyingPlan,
  BuyingProblem,
  FeedItem,
  Offer,
  Ordered,
  Trip,
} from '../../buying/buying-problem.js';
import { planBuying } from '../../buying/plan-buying.js';
import type { FarmPicture } from '../../farm/picture.js';
import { bagPrice } from '../../farm/feed-product.js';
import type { FeedProduct } from '../../farm/product.js';
import { FEED_KEPT_DAYS, type FactOf } from '../../farm/told-fact.js';
import { costMinor } from '../../money/money.js';
import type { Tables } from '../../tables/tables.js';
import { nameOfPhase } from '../phase-feed.js';
import type { PlannedBatch } from '../work/dated-work.js';
import { feedClasses, type FeedClass } from './feed-classes.js';
import {
  fedSinceKg,
  feedLots,
  leftOf,
  untilDay,
  type FeedLot,
  type StoredFeed,
} from './feed-stock.js';
import { ANYWHERE, whereBought, type Source } from './where-bought.js';

/** Days that are planned for. */
export const YEAR_DAYS = 365;

/** One kind of feed over the year: what is fed, what there is, and what it is bought as. */
export interface FeedOfYear {
  readonly of: FeedClass;
  readonly name: string;
  /** Names of the batches that eat it from today on. */
  readonly eatenBy: readonly string[];
  /** Fed by day from today. */
  readonly needKg: Float64Array;
  readonly stock: readonly FeedLot[];
  /** As the items of the problem have them, in the same order. */
  readonly bought: readonly BoughtAs[];
}

/** A feed as one bag of it is bought. */
export interface BoughtAs {
  readonly name: string;
  readonly product?: FeedProduct;
  readonly bagKg: number;
  readonly price?: string;
  readonly keepsDays: number;
  readonly source: number;
}

/** A year of feed: what is fed, and what is bought on which trips. */
export interface YearBuying {
  readonly feeds: readonly FeedOfYear[];
  readonly sources: readonly Source[];
  readonly problem: BuyingProblem;
  readonly plan: BuyingPlan;
  /** What the stores take that somebody measured, kg; Infinity where none is. */
  readonly storeKg: number;
  /** Purchases told whose name no feed has. */
  readonly unknown: number;
  /** Names of the batches, by their ids. */
  readonly names: ReadonlyMap<string, string>;
  /** Where today stands in what the classes are fed by day. */
  readonly now: number;
}

/**
 * Plans what feed to buy for the batches of a farm in the year from today.
 *
 * @param bought what was told as bought, of the whole farm
 */
export function yearBuying(
  picture: FarmPicture,
  tables: Tables,
  planned: readonly PlannedBatch[],
  bought: readonly FactOf<'bought'>[],
): YearBuying {
  const { today, products, farm } = picture;
  const feedProducts = products.filter((each): each is FeedProduct => each.kind === 'feed');
  // What came longer ago lies in no store any more, by whatever name it was bought.
  const isKept = ({ on }: { on: PlainDate }) => daysBetween(on, today) <= FEED_KEPT_DAYS;
  const feedsKnown = [...feedProducts, ...feedsByPhase(planned)];
  const { lots } = feedLots(feedsKnown, bought, today);
  const { unknown } = feedLots(feedsKnown, bought.filter(isKept), today);
  const kept = lots.filter(isKept);
  const from = kept[0]?.on ?? today;
  const span = { from, until: addDays(today, YEAR_DAYS) };
  const classes = feedClasses(picture, planned, span);
  const { buying } = tables.judgements;
  const sources = whereBought(picture, tables, {
    days: YEAR_DAYS,
    hourMinor: buying.tripHourBags.value * usualBagMinor(feedProducts, farm.currency),
  });
  const feeds = classes
    .map((of) => feedOfYear(picture, tables, { of, span, planned, lots: kept, sources }))
    .filter(({ needKg, stock }) => needKg.some((kg) => 0 < kg) || 0 < stock.length);
  const storeKg = storeOf(picture);
  const problem: BuyingProblem = {
    days: YEAR_DAYS,
    suppliers: sources.map(({ days }) => days),
    items: feeds.map((feed) => itemOf(feed, picture, tables)),
    storeKg,
    handDays: tables.feedKeeping.bagLeadDays,
    ordered: orderedFeed(picture, tables, { feeds, sources }),
  };
  return {
    ...{
      feeds,
      sources,
      problem,
      plan: planBuying(problem, undefined, keptTrips(picture, sources)),
      storeKg,
      unknown,
    },
    names: new Map(planned.map(({ id, name }) => [id, name])),
    now: daysBetween(from, today),
  };
}

/** Trips of the last plan of the work that are still to come. */
function keptTrips({ keptPlans, today }: FarmPicture, sources: readonly Source[]): Trip[] {
  const jobs = Object.values(keptPlans[0]?.jobs ?? {});
  const all = jobs.flatMap(({ trip }): Trip[] => {
    const supplier = sources.findIndex(({ name }) => name === (trip?.from ?? ANYWHERE));
    const day = trip ? daysBetween(today, trip.on) : -1;
    return supplier < 0 || day < 0 || YEAR_DAYS <= day ? [] : [{ supplier, day }];
  });
  return all
    .sort((a, b) => a.day - b.day || a.supplier - b.supplier)
    .filter(({ day, supplier }, k) => day !== all[k - 1]?.day || supplier !== all[k - 1]?.supplier);
}

/**
 * Bags of trips that are still to come of which the order is ticked off: they are as the last plan had
 * them, for what was ordered is not counted anew. One that its day went by is made on the next.
 */
function orderedFeed(
  { keptPlans, progress, today }: FarmPicture,
  tables: Tables,
  { feeds, sources }: Pick<YearBuying, 'feeds' | 'sources'>,
): Ordered[] {
  const isDone = (key: string): boolean =>
    progress.some((mark) => mark.key === key && mark.doneOn !== undefined);
  const isOrdered = (key: string): boolean => {
    const at = key.lastIndexOf('/') + 1;
    const template = tables.taskTemplates.find(({ id }) => id === key.slice(at));
    // An order is for the feed of the first days; later trips go by how the birds eat.
    return (
      template?.event === 'arrival' &&
      !isDone(key) &&
      template.waitsFor.some((id) => isDone(key.slice(0, at) + id))
    );
  };
  return Object.entries(keptPlans[0]?.jobs ?? {}).flatMap(([key, { trip }]) => {
    const supplier = sources.findIndex(({ name }) => name === (trip?.from ?? ANYWHERE));
    if (!trip?.lines || supplier < 0 || !isOrdered(key)) return [];
    const from = Math.max(0, daysBetween(today, trip.on));
    const day = sources[supplier]!.days.days.indexOf(1, from);
    if (day < 0) return [];
    return trip.lines.flatMap(({ name, bags }) =>
      feeds.flatMap(({ bought }, item): Ordered[] => {
        const offer = bought.findIndex((each) => each.name === name && each.source === supplier);
        return offer < 0 ? [] : [{ supplier, day, item, offer, bags }];
      }),
    );
  });
}

function usualBagMinor(feeds: readonly FeedProduct[], currency: string): number {
  if (feeds.length === 0) return 1;
  const sum = feeds.reduce((all, { price }) => all + costMinor(price, 1, currency), 0);
  return Math.max(1, Math.round(sum / feeds.length));
}

/** Feed stores of a known size, together. */
export function storeOf({ facilities }: FarmPicture): number {
  const stores = facilities.flatMap((each) => (each.kind === 'feed-store' ? [each] : []));
  const isKnown = stores.every(({ assumed }) => !assumed?.includes('capacityKg'));
  return 0 < stores.length && isKnown
    ? stores.reduce((sum, { capacityKg }) => sum + capacityKg, 0)
    : Infinity;
}

interface Planned {
  readonly of: FeedClass;
  readonly span: { readonly from: PlainDate };
  readonly planned: readonly PlannedBatch[];
  readonly lots: readonly FeedLot[];
  readonly sources: readonly Source[];
}

function feedOfYear(
  picture: FarmPicture,
  tables: Tables,
  { of, span, planned, lots, sources }: Planned,
): FeedOfYear {
  const { today } = picture;
  const now = daysBetween(span.from, today);
  const ids = of.typed ? [nameOf(of)] : of.feeds.map(({ id }) => id);
  const mine = lots.filter(({ feed }) => ids.includes(feed.id));
  const opened = openingsOf(picture, planned, of);
  const fedSince = (since: PlainDate): number =>
    [...of.kgOf].reduce((sum, [id, kg]) => {
      const own = opened.filter(({ batchId }) => batchId === id);
      return sum + fedSinceKg(own, since, (from) => sumOf(kg, daysBetween(span.from, from), now));
    }, 0);
  const bought = boughtAs(tables, of, sources);
  const { maxDays } = tables.feedKeeping;
  return {
    of,
    name: nameOf(of),
    eatenBy: planned
      .filter(({ id }) => 0 < sumOf(of.kgOf.get(id) ?? NOTHING, now, Infinity))
      .map(({ name }) => name),
    needKg: of.kg.slice(now),
    stock: leftOf(mine, fedSince).filter(
      (lot) => lot.isCounted || 0 <= untilDay(lot, today, lot.feed.keepsDays ?? maxDays),
    ),
    bought,
  };
}

const NOTHING = new Float64Array();

function sumOf(kg: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let day = from; day < Math.min(to, kg.length); day++) sum += kg[day]!;
  return sum;
}

const nameOf = ({ feeds, phases, purpose }: FeedClass): string =>
  feeds[0]?.name ?? nameOfPhase(phases[0]!, purpose);

/** Feeds by the phases that birds are fed in, under the names that they are bought by without a product. */
function feedsByPhase(planned: readonly PlannedBatch[]): StoredFeed[] {
  const feeds = new Map<string, StoredFeed>();
  for (const { plan } of planned)
    for (const { name, bagKg } of plan.feed.phases) {
      const called = nameOfPhase(name, plan.purpose);
      if (!feeds.has(called)) feeds.set(called, { id: called, name: called, bagKg });
    }
  return [...feeds.values()];
}

/** Bags opened of a kind of feed, each with its weight, by date. */
function openingsOf(
  { feedOpenings = [] }: FarmPicture,
  planned: readonly PlannedBatch[],
  of: FeedClass,
) {
  return feedOpenings.flatMap((opening) => {
    const plan = planned.find(({ id }) => id === opening.batchId)?.plan;
    if (plan?.purpose !== of.purpose) return [];
    const phase = plan.feed.phases.findLast(({ starts }) => String(starts.value) <= opening.date);
    if (!phase || !of.phases.includes(phase.name)) return [];
    return [{ ...opening, kg: opening.bags * (opening.bagKg ?? phase.bagKg) }];
  });
}

function boughtAs(tables: Tables, of: FeedClass, sources: readonly Source[]): BoughtAs[] {
  const { maxDays } = tables.feedKeeping;
  const anywhere = sources.length - 1;
  if (of.typed) return [{ ...of.typed, name: nameOf(of), keepsDays: maxDays, source: anywhere }];
  return of.feeds.map((product) => {
    const source = sources.findIndex(({ supplier }) => supplier?.id === product.supplierId);
    return {
      ...{ name: product.name, product, bagKg: product.bagKg, price: product.price },
      keepsDays: product.keepsDays ?? maxDays,
      source: source < 0 ? anywhere : source,
    };
  });
}

function itemOf(feed: FeedOfYear, picture: FarmPicture, tables: Tables): FeedItem {
  const { needKg, stock, bought } = feed;
  const {
    today,
    farm: { currency },
  } = picture;
  return {
    needKg,
    notBefore: notBeforeOf(feed, picture, tables),
    stock: stock.map((lot) => {
      const { keepsDays } = bought.find(({ product }) => product?.id === lot.feed.id) ?? bought[0]!;
      return { kg: lot.kg, untilDay: untilDay(lot, today, keepsDays) };
    }),
    offers: bought.map((each): Offer => {
      const { source: supplier, bagKg, keepsDays, product } = each;
      const breaks = product?.priceBreaks?.map(({ fromBags }) => fromBags) ?? [];
      return { supplier, bagKg, keepsDays, breaks, costOf: costOfBags(each, currency) };
    }),
  };
}

/** Feed of birds that are to come is left in the shop until soon before: they may come later, or not at all. */
function notBeforeOf(
  { of, needKg }: FeedOfYear,
  { batches, today }: FarmPicture,
  { judgements }: Tables,
): Int32Array {
  const { value: aheadDays } = judgements.buying.notComeAheadDays;
  const from = new Int32Array(needKg.length).fill(needKg.length);
  for (const [id, kg] of of.kgOf) {
    const arrival = batches.find((batch) => batch.id === id)?.arrivalDate ?? today;
    const first = Math.max(0, daysBetween(today, arrival) - aheadDays);
    const own = kg.subarray(kg.length - needKg.length);
    own.forEach((each, day) => {
      if (0 < each) from[day] = Math.min(from[day]!, first);
    });
  }
  return from;
}

/**
 * Of whole bags at the price of that many; what has no price counts as nothing. The search asks for
 * the same few again and again.
 */
function costOfBags({ product, price }: BoughtAs, currency: string): Offer['costOf'] {
  const priced = (bags: number, asBags: number): number => {
    const each = product ? bagPrice(product, asBags) : price;
    return each === undefined ? 0 : costMinor(each, bags, currency);
  };
  const known: number[] = [];
  return (bags, pricedAsBags = 0) =>
    bags < pricedAsBags ? priced(bags, pricedAsBags) : (known[bags] ??= priced(bags, bags));
}
