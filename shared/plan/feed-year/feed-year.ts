import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import { storeByDay } from '../../buying/store-days.js';
import { from, fromFarm, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { FactOf } from '../../farm/told-fact.js';
import type { PlanIssue } from '../../problems/plan-issue.js';
import type { Tables } from '../../tables/tables.js';
import type { Fetching } from '../cost/fetching.js';
import type { FedAnimals } from './feed-animals.js';
import { byLevel } from '../found.js';
import { feedActuals, type FeedActual } from './feed-actual.js';
import { feedActualYear, type FeedActualYear } from './feed-actual-year.js';
import { feedKind, type FeedKind } from './feed-kind.js';
import type { FeedTrip } from './feed-trips.js';
import { feedYearFormulas } from './feed-year-formulas.js';
import { feedYearIssues } from './feed-year-issues.js';
import { boughtApart, type BoughtApart } from './bought-apart.js';
import type { HerdPurchase } from './herd-costs.js';
import { fetchingOf, tripShares, type TripShare } from './trip-shares.js';
import { cashByMonth, type CashMonth } from './year-cash.js';
import { boughtInYear } from './trips-ahead.js';
import { YEAR_DAYS, type YearBuying } from './year-buying.js';

/** What feeds a farm through the year from today: what to buy, on which trips, for how much. */
export interface FeedYear {
  readonly today: PlainDate;
  /** The last day of it. */
  readonly to: PlainDate;
  readonly currency: string;
  readonly total: NumberQuantity;
  /** What the total leaves out because nothing is known of its price. */
  readonly leftOut: readonly string[];
  readonly feed: NumberQuantity;
  readonly tripsCost: NumberQuantity;
  readonly feeds: readonly FeedKind[];
  readonly herds: readonly HerdPurchase[];
  readonly trips: readonly FeedTrip[];
  /** What is bought for cattle on days of no trip, in order. */
  readonly apart: readonly BoughtApart[];
  readonly months: readonly CashMonth[];
  /** The trips shared among the batches by the weight fetched for them; empty where no trip has a price. */
  readonly tripShares: readonly TripShare[];
  /** Left out where no trip has a price. */
  readonly fetching?: Fetching;
  readonly store: {
    /** Left out where nobody measured the store. */
    readonly holdsKg?: number;
    readonly most: NumberQuantity;
    /** By day from today, after the trips of the day. */
    readonly kgByDay: readonly number[];
  };
  /** Of batches whose bags were told: what their feed cost beside the plan, and why. */
  readonly actual: readonly FeedActual[];
  /** The same of all of them together; left out where there is none. */
  readonly actualOfAll?: FeedActualYear;
  readonly issues: readonly PlanIssue[];
}

/**
 * The feed of a farm's year: a shopping list by trip and the money by month.
 *
 * @param plans of its animals
 * @param bought what was told as bought, of the whole farm
 */
export function feedYear(
  picture: FarmPicture,
  tables: Tables,
  plans: FedAnimals,
  bought: readonly FactOf<'bought'>[],
): FeedYear {
  const { year, herds, trips } = boughtInYear(picture, tables, plans, bought);
  const feeds = year.feeds.map((feed, item) => feedKind(picture, plans, year, { feed, item }));
  const feedCost = sumOf(
    'Feed',
    feeds.flatMap(({ cost }) => cost ?? []),
  );
  const tripsCost = sumOf(
    'Trips',
    trips.flatMap(({ tripCost }) => tripCost ?? []),
  );
  const leftOut = [
    ...feeds.filter(({ cost, bags }) => !cost && 0 < bags.value).map(({ name }) => name),
    ...herds.filter(({ cost }) => !cost).map(({ name }) => name.toLowerCase()),
  ];
  const { today } = picture;
  const shares = tripsCost.value === 0 ? [] : tripShares(year, trips);
  const fetching = fetchingOf(shares, tripsCost);
  const actual = feedActuals(picture, tables, plans.batches, bought);
  const actualOfAll = feedActualYear(actual);
  return {
    today,
    to: addDays(today, YEAR_DAYS - 1),
    currency: picture.farm.currency,
    total: sumOf('Feed of the year', [
      feedCost,
      tripsCost,
      ...herds.flatMap(({ cost }) => cost ?? []),
    ]),
    leftOut,
    feed: feedCost,
    ...{ tripsCost, feeds, herds, trips, apart: boughtApart(herds, trips) },
    months: cashByMonth(today, trips, herds),
    tripShares: shares,
    ...(fetching ? { fetching } : {}),
    store: storePart(year, today),
    actual,
    ...(actualOfAll ? { actualOfAll } : {}),
    issues: byLevel(feedYearIssues(picture, { plans, year, feeds, herds })),
  };
}

const sumOf = (label: string, parts: readonly NumberQuantity[]): NumberQuantity =>
  quantity(
    label,
    parts.reduce((sum, { value }) => sum + value, 0),
    'money',
    feedYearFormulas.sum,
    parts.map((part) => from(part)),
  );

function storePart({ problem, plan, storeKg }: YearBuying, today: PlainDate): FeedYear['store'] {
  const kg = storeByDay(problem, plan);
  const most = kg.reduce((best, each, day) => (kg[best]! < each ? day : best), 0);
  return {
    ...(storeKg === Infinity ? {} : { holdsKg: storeKg }),
    most: quantity('Most feed in the store', kg[most]!, 'kg', feedYearFormulas.store, [
      input('On', addDays(today, most), 'date'),
      ...(storeKg === Infinity ? [] : [fromFarm('The store takes', storeKg, 'kg')]),
    ]),
    kgByDay: Array.from(kg, (each) => Math.round(10 * each) / 10),
  };
}
