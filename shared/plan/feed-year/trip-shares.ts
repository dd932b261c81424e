import { from, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { sharedOut } from '../../money/shared-out.js';
import { lastsTo } from '../../buying/store-days.js';
import type { Fetching } from '../cost/fetching.js';
import { feedYearFormulas } from './feed-year-formulas.js';
import type { FeedTrip } from './feed-trips.js';
import type { YearBuying } from './year-buying.js';

/** What one batch bears of the trips of the year. */
export interface TripShare {
  readonly batchId: string;
  readonly name: string;
  /** What is fetched for it in the year. */
  readonly kg: NumberQuantity;
  readonly cost: NumberQuantity;
}

/**
 * The trips of the year shared among the batches by the weight that is fetched for each; the shares
 * of a trip add up to it, to the smallest coin.
 */
export function tripShares(year: YearBuying, trips: readonly FeedTrip[]): TripShare[] {
  const { plan, problem, feeds } = year;
  const lasts = problem.items.map((_, item) => lastsTo(problem, plan, item));
  const kgOf = new Map<string, number>();
  const minorOf = new Map<string, number>();
  const tripsOf = new Map<string, number>();
  plan.trips.forEach((trip, k) => {
    const fetched = new Map<string, number>();
    for (const { item, offer, bags, day, supplier } of plan.purchases) {
      if (day !== trip.day || supplier !== trip.supplier) continue;
      const kg = bags * feeds[item]!.bought[offer]!.bagKg;
      for (const [id, share] of eatersOf(feeds[item]!.of.kgOf, day, lasts[item]!.get(day)!, year))
        add(fetched, id, kg * share);
    }
    const ids = [...fetched.keys()];
    const weights = [...fetched.values()];
    sharedOut(trips[k]!.tripCost?.value ?? 0, weights).forEach((minor, i) => {
      add(kgOf, ids[i]!, weights[i]!);
      add(minorOf, ids[i]!, minor);
      add(tripsOf, ids[i]!, 1);
    });
  });
  return [...kgOf].map(([batchId, kg]) => {
    const name = year.names.get(batchId)!;
    const fetched = quantity(`Feed fetched for ${name}`, kg, 'kg', feedYearFormulas.fetched, [
      input('Trips on which some of it is fetched', tripsOf.get(batchId)!, 'count'),
    ]);
    return {
      ...{ batchId, name, kg: fetched },
      cost: quantity(
        `Share of the trips, ${name}`,
        minorOf.get(batchId)!,
        'money',
        feedYearFormulas.tripShare,
        [from(fetched)],
      ),
    };
  });
}

/** What trips cost a kilogram, of all feed and of each batch; undefined where no trip has a price. */
export function fetchingOf(
  shares: readonly TripShare[],
  tripsCost: NumberQuantity,
): Fetching | undefined {
  const all = shares.reduce((sum, { kg }) => sum + kg.value, 0);
  if (tripsCost.value === 0 || all === 0) return undefined;
  const perKg = (label: string, cost: NumberQuantity, kg: number): NumberQuantity =>
    quantity(label, cost.value / kg, 'moneyPerKg', feedYearFormulas.fetching, [
      from(cost, 'C'),
      input('Fetched', kg, 'kg', 'n'),
    ]);
  return {
    perKg: perKg('Fetching feed', tripsCost, all),
    batches: Object.fromEntries(
      shares.map(({ batchId, cost, kg }) => [batchId, perKg('Fetching its feed', cost, kg.value)]),
    ),
  };
}

/** Who eats what lasts from one day to before another, as shares; of the whole year where nobody does. */
function eatersOf(
  kgOf: ReadonlyMap<string, Float64Array>,
  from: number,
  to: number,
  { now }: YearBuying,
): [string, number][] {
  const within = (days: [number, number]): [string, number][] =>
    [...kgOf].flatMap(([id, kg]) => {
      const sum = kg.slice(now + days[0], now + days[1]).reduce((all, each) => all + each, 0);
      return 0 < sum ? [[id, sum]] : [];
    });
  const then = within([from, to]);
  const eaters = 0 < then.length ? then : within([0, Infinity]);
  const all = eaters.reduce((sum, [, kg]) => sum + kg, 0);
  return eaters.map(([id, kg]) => [id, kg / all]);
}

const add = (to: Map<string, number>, id: string, by: number): void => {
  to.set(id, (to.get(id) ?? 0) + by);
};
