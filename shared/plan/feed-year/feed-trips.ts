import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Purchase, Trip } from '../../buying/buying-problem.js';
import { lastsTo, storeByDay } from '../../buying/store-days.js';
import {
  datedFact,
  from,
  fromFarm,
  fromJudgement,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../../explain/quantity.js';
import { bagPrice } from '../../farm/feed-product.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import { billFormulas } from '../bill.js';
import { priceInput } from '../prices.js';
import type { FirstFeed } from '../tasks/task.js';
import { feedYearFormulas } from './feed-year-formulas.js';
import type { HerdPurchase } from './herd-costs.js';
import { isOpenOn, type Source } from './where-bought.js';
import type { YearBuying } from './year-buying.js';

/** One feed on a shopping list. */
export interface TripLine {
  readonly name: string;
  readonly bags: NumberQuantity;
  readonly bagKg: number;
  /** Names of the batches that eat of these bags, and not of all that is ever bought of the feed. */
  readonly eatenBy: readonly string[];
  /** Of one bag where so many are bought, decimal text; left out where none is known. */
  readonly each?: string;
  readonly cost?: NumberQuantity;
  /** The day through which there is enough of it then, at most the last on which it is fed. */
  readonly lastsThrough: PlainDate;
  /** Of it nobody will eat in time, kg. */
  readonly wasteKg?: number;
}

/** Bags or blocks for cattle that become due not long after a trip. */
export interface TakenAlong {
  readonly name: string;
  readonly count: number;
  readonly kg: number;
  readonly cost: NumberQuantity;
}

/** One trip to a seller, or one delivery, with all that is bought on it. */
export interface FeedTrip {
  readonly on: Quantity;
  /** When it must be ordered, where that is earlier. */
  readonly orderOn?: PlainDate;
  /** Days it can wait: on the last of them the first feed of it is used up. */
  readonly spareDays: number;
  /** What it brings that new birds eat first, and the day by which it is to be there for them. */
  readonly firstFeed?: FirstFeed;
  readonly from: string;
  readonly comes: 'fetched' | 'delivered';
  readonly lines: readonly TripLine[];
  /** Minerals and salt for cattle that are taken along. */
  readonly along: readonly TakenAlong[];
  readonly kg: NumberQuantity;
  /** Left out where nobody said what a trip costs. */
  readonly tripCost?: NumberQuantity;
  /** Left out where nothing of it has a price. */
  readonly total?: NumberQuantity;
  /** What lies in the store when it is home, kg. */
  readonly thenInStoreKg: number;
}

/** The trips of a year as lists that somebody can shop by. */
export function feedTrips(
  picture: FarmPicture,
  tables: Tables,
  year: YearBuying,
  herds: readonly HerdPurchase[],
): FeedTrip[] {
  const { plan, problem, sources } = year;
  const lasts = problem.items.map((_, item) => lastsTo(problem, plan, item));
  const store = storeByDay(problem, plan);
  return plan.trips.map((trip): FeedTrip => {
    const source = sources[trip.supplier]!;
    const date = addDays(picture.today, trip.day);
    const ofTrip = plan.purchases.filter(
      ({ day, supplier }) => day === trip.day && supplier === trip.supplier,
    );
    const allBags = ofTrip.reduce((sum, { bags }) => sum + bags, 0);
    const lines = ofTrip.map((bought) =>
      lineOf(picture, year, bought, {
        lasts: lasts[bought.item]!.get(bought.day)!,
        eatenBy: eatersOf(year, bought, lasts[bought.item]!.get(bought.day)!),
        pricedAsBags: source.supplier?.countsTogether ? allBags : bought.bags,
      }),
    );
    const tripCost =
      source.tripMinor === undefined
        ? undefined
        : quantity('The trip', source.tripMinor, 'money', feedYearFormulas.trip, [
            fromFarm(source.name, source.tripMinor, 'money', 'c_trip'),
          ]);
    // Two trips of one day take it along once.
    const isFirst = plan.trips.find(({ day }) => day === trip.day) === trip;
    const along = isFirst ? takenAlong(date, herds) : [];
    const costs = [...lines, ...along].flatMap(({ cost }) => cost ?? []);
    if (tripCost) costs.push(tripCost);
    const keep = tables.feedKeeping;
    const out = firstOut(picture, year, trip.day, lines);
    const first = firstFeedOf(picture, year, trip);
    return {
      on: datedFact(
        source.supplier?.comes === 'delivered'
          ? `Delivery from ${source.name}`
          : `To ${source.name}`,
        date,
        feedYearFormulas.day,
        [
          input('First used up', out, 'date', 'D_out'),
          fromTable(keep, 'Days in hand', keep.bagLeadDays, 'day'),
          input('Hours of a trip', source.tripH, 'h'),
          fromJudgement(tables.judgements.buying.notComeAheadDays),
        ],
      ),
      ...(source.leadDays === 0 ? {} : { orderOn: orderDay(picture, source, date) }),
      spareDays: Math.max(0, daysBetween(date, out)),
      ...(first ? { firstFeed: first } : {}),
      from: source.name,
      comes: source.supplier?.comes ?? 'fetched',
      ...{ lines, along },
      kg: quantity(
        'Weight',
        lines.reduce((sum, { bags, bagKg }) => sum + bags.value * bagKg, 0) +
          along.reduce((sum, { kg }) => sum + kg, 0),
        'kg',
        feedYearFormulas.sum,
        [
          ...lines.map(({ bags, name }) => from(bags, undefined, name)),
          ...along.map(({ name, kg }) => input(name, kg, 'kg')),
        ],
      ),
      ...(tripCost ? { tripCost } : {}),
      ...(costs.length === 0 ? {} : { total: sumOfCosts(costs) }),
      thenInStoreKg: Math.round(10 * store[trip.day]!) / 10,
    };
  });
}

/** When to call: the last day before it is too late on which the seller is open. */
function orderDay(picture: FarmPicture, { supplier, leadDays }: Source, date: PlainDate) {
  const latest = addDays(date, -leadDays);
  const open = Array.from({ length: WEEK }, (_, back) => addDays(latest, -back)).find(
    (day) => picture.today <= day && isOpenOn(picture, supplier, day),
  );
  return open ?? latest;
}

const WEEK = 7;

/** What is bought for cattle on the day of a trip. */
const takenAlong = (date: PlainDate, herds: readonly HerdPurchase[]): TakenAlong[] =>
  herds.flatMap(({ name, eachKg, paid }) => {
    const mine = paid.filter(({ on }) => on === date);
    if (eachKg === undefined || mine.length === 0) return [];
    const count = mine.reduce((sum, { amount }) => sum + amount, 0);
    const minor = mine.reduce((sum, each) => sum + each.minor, 0);
    const cost = quantity(name, minor, 'money', feedYearFormulas.sum, [
      input(`One bag of ${name}`, eachKg, 'kg'),
      input('Taken along', count, 'bags', 'n'),
    ]);
    return [{ name, count, kg: count * eachKg, cost }];
  });

const sumOfCosts = (costs: readonly NumberQuantity[]): NumberQuantity =>
  quantity(
    'All of it',
    costs.reduce((sum, { value }) => sum + value, 0),
    'money',
    feedYearFormulas.sum,
    costs.map((cost) => from(cost)),
  );

interface LineOf {
  /** The first day that it is no longer enough for. */
  readonly lasts: number;
  readonly eatenBy: readonly string[];
  readonly pricedAsBags: number;
}

/**
 * Who eats what is bought: from the day on which what was there is used up. Where nobody eats any of
 * it in time, all that are fed of its kind.
 */
function eatersOf(year: YearBuying, { item, day }: Purchase, lasts: number): readonly string[] {
  const { feeds, plan, problem, names, now } = year;
  const { of, eatenBy, needKg } = feeds[item]!;
  const purchases = plan.purchases.filter((each) => each.item === item && each.day < day);
  const out = Math.max(day, outDay(needKg, { ...plan, purchases }, { problem, item }));
  const eaters = [...of.kgOf].flatMap(([id, kg]) =>
    kg.subarray(now + out, now + lasts).some((each) => 0 < each) ? (names.get(id) ?? []) : [],
  );
  return eaters.length === 0 ? eatenBy : eaters;
}

function lineOf(
  { farm, today }: FarmPicture,
  { feeds }: YearBuying,
  { item, offer, bags: count, cost, wasteKg }: Purchase,
  { lasts, eatenBy, pricedAsBags }: LineOf,
): TripLine {
  const { bought, needKg } = feeds[item]!;
  const lastsThrough = addDays(
    today,
    needKg.findLastIndex((kg, on) => 0 < kg && on < lasts),
  );
  const { name, bagKg, product, price } = bought[offer]!;
  const each = product ? bagPrice(product, pricedAsBags) : price;
  const bags = quantity(name, count, 'bags', feedYearFormulas.bags, [
    fromFarm(`One bag of ${name}`, bagKg, 'kg'),
    input('Eaten by', eatenBy.join(', '), 'text'),
    input('Lasts through', lastsThrough, 'date'),
  ]);
  return {
    ...{ name, bags, bagKg, eatenBy },
    ...(each === undefined
      ? {}
      : {
          each,
          cost: quantity(name, cost, 'money', billFormulas.line, [
            from(bags, 'n'),
            priceInput({ price: each, product: name }, farm.currency),
          ]),
        }),
    lastsThrough,
    ...(wasteKg < LEAST_WASTE_SHARE * bagKg ? {} : { wasteKg: Math.round(10 * wasteKg) / 10 }),
  };
}

/** Less of a bag is not worth a word. */
const LEAST_WASTE_SHARE = 0.2;

/** The first day on which a feed of a trip would be used up without it. */
function firstOut(
  { today }: FarmPicture,
  { plan, problem, feeds }: YearBuying,
  day: number,
  lines: readonly TripLine[],
): PlainDate {
  let first = problem.days;
  feeds.forEach((_, item) => {
    const mine = plan.purchases.filter((bought) => bought.item === item);
    if (!mine.some((bought) => bought.day === day)) return;
    const before = { ...plan, purchases: mine.filter((bought) => bought.day < day) };
    const out = outDay(problem.items[item]!.needKg, before, { problem, item });
    first = Math.min(first, Math.max(day, out));
  });
  return lines.length === 0 ? addDays(today, day) : addDays(today, first);
}

/** The first feed of birds that a trip brings, of those that come soonest. */
function firstFeedOf(
  { batches, today, feedBought = [] }: FarmPicture,
  { plan, problem, feeds, sources }: YearBuying,
  { day, supplier }: Trip,
): FirstFeed | undefined {
  const all = feeds.flatMap(({ name, eatenBy, needKg }, item): FirstFeed[] => {
    const mine = plan.purchases.filter((bought) => bought.item === item);
    if (!mine.some((bought) => bought.day === day)) return [];
    const before = { ...plan, purchases: mine.filter((bought) => bought.day < day) };
    const out = outDay(needKg, before, { problem, item });
    const on = addDays(today, out);
    // Birds that just came eat something: where no purchase is ever told, nobody knows what.
    const since = out === 0 && 0 < feedBought.length ? addDays(on, -WEEK) : on;
    const batch = batches.find(
      ({ name: who, arrivalDate }) =>
        eatenBy.includes(who) && since <= arrivalDate && arrivalDate <= on,
    );
    const soonest = addDays(today, Math.min(day, sources[supplier]!.opensOn));
    return batch ? [{ name, batchId: batch.id, by: addDays(batch.arrivalDate, -1), soonest }] : [];
  });
  return all.toSorted((a, b) => (a.by < b.by ? -1 : 1))[0];
}

/** The first day that is not served by what is bought so far. */
export function outDay(
  needKg: Float64Array,
  plan: YearBuying['plan'],
  { problem, item }: { problem: YearBuying['problem']; item: number },
): number {
  const last = [...lastsTo(problem, plan, item).values()].at(-1);
  if (last !== undefined) return last;
  const lots = [...problem.items[item]!.stock]
    .sort((a, b) => a.untilDay - b.untilDay)
    .map((lot) => ({ ...lot }));
  for (let day = 0; day < needKg.length; day++) {
    let kg = needKg[day]!;
    for (const lot of lots) {
      if (lot.untilDay < day) continue;
      const fed = Math.min(lot.kg, kg);
      lot.kg -= fed;
      kg -= fed;
    }
    if (TINY_KG < kg) return day;
  }
  return needKg.length;
}

const TINY_KG = 1e-6;
