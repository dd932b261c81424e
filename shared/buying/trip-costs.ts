import type { BuyingPlan, BuyingProblem, Ordered, Purchase, Trip } from './buying-problem.js';
import { dueBeforeKg, isFetchedOn, itemDays, servesUntilKg, type ItemDays } from './item-days.js';
import { likelyDays, merged } from './likely-days.js';
import { Ways, type Fines, type Reached } from './bought-ways.js';
import { daysOf, hasRoomFor, shortOf, stocksKg, TINY_KG } from './store-by-trip.js';
import { bestPurchases, purchasesOf, SOON_COST, type Stop } from './item-purchases.js';

/** Rounds in which the items make room for each other in a store that is too small for them. */
const ROUNDS = 4;

/** What is bought on given trips, and what that costs with the fines for what cannot be met. */
export interface Costed {
  readonly trips: readonly Trip[];
  readonly cost: number;
}

/** Costs sets of trips of one problem; what was worked out for an item and its stops is kept. */
export class TripCosts {
  readonly items: readonly ItemDays[];
  /** Some seller's prices go by all bags of a trip: sets of trips take longer to cost. */
  readonly isTogether: boolean;
  /** The most bags that any step of a price begins with. */
  private readonly mostBags: number;
  private readonly fines: Fines;
  private readonly found = new Map<string, Found>();
  private readonly ways = new Ways();
  /** What all need of each item costs at least, on whichever trips it is bought. */
  private readonly leastCosts: readonly number[];
  /** The items by what it takes to work one out: most sets of trips cost too much by the first few. */
  private readonly quickFirst: readonly number[];
  /** Days on which a trip can be thought of: the last open ones of each week, and before seasons. */
  private readonly days: readonly Trip[];
  /** The offers of each item, the largest bags first: on one trip smaller ones fill up what these leave. */
  private readonly largestFirst: readonly (readonly number[])[];

  /** Trips for which something was ordered, by day. */
  private readonly orderedTrips: readonly Trip[];

  constructor(readonly problem: BuyingProblem) {
    this.orderedTrips = (problem.ordered ?? []).reduce<readonly Trip[]>(
      (all, { supplier, day }) => merged(all, [{ supplier, day }]),
      [],
    );
    this.items = problem.items.map((item) => itemDays(problem, item));
    const perKg = problem.items.flatMap(({ offers }) =>
      offers.map(({ bagKg, costOf }) => costOf(1) / bagKg),
    );
    const trips = problem.suppliers.map(({ tripCost }) => tripCost);
    const most = Math.max(1, ...trips) + 100 * Math.max(1, ...perKg);
    this.fines = { shortPerKg: 100 * most, overPerKg: most };
    this.days = likelyDays(problem, this.items);
    this.leastCosts = this.items.map(
      ({ sumKg, stockServesKg, leastPerKg }) => leastPerKg * (sumKg.at(-1)! - stockServesKg),
    );
    const daysFed = this.items.map(({ item }) => item.needKg.filter((kg) => 0 < kg).length);
    const takes = (i: number): number => daysFed[i]! * problem.items[i]!.offers.length;
    this.quickFirst = [...this.items.keys()].sort((a, b) => takes(a) - takes(b));
    this.isTogether = problem.suppliers.some(({ countsTogether }) => countsTogether);
    this.mostBags = Math.max(
      1,
      ...problem.items.flatMap(({ offers }) => offers.flatMap(({ breaks }) => breaks)),
    );
    this.largestFirst = problem.items.map(({ offers }) =>
      [...offers.keys()].sort((a, b) => offers[b]!.bagKg - offers[a]!.bagKg),
    );
  }

  costed = (trips: readonly Trip[], below?: number): Costed => ({
    trips: this.withOrdered(trips),
    cost: this.costOf(trips, below),
  });

  /** Trips for which something was ordered are made, whatever others there are. */
  private withOrdered(trips: readonly Trip[]): readonly Trip[] {
    return this.orderedTrips.length === 0 ? trips : merged(trips, this.orderedTrips);
  }

  /**
   * @param others by day; those for which something was ordered are made as well
   * @param below a cost that is of no interest any more: with the store left out none is less
   */
  costOf(others: readonly Trip[], below = Infinity): number {
    const trips = this.withOrdered(others);
    if (this.isTogether) return this.pricedTogether(trips).cost;
    const cost = this.freeCostOf(trips, below);
    if (this.problem.storeKg === Infinity || below <= cost) return cost;
    const purchases = this.freely(trips);
    return this.overKg(trips, purchases) <= TINY_KG
      ? cost
      : this.tripCostOf(trips) +
          this.withinStore(trips, purchases, { below: below - this.tripCostOf(trips) }).cost;
  }

  /** The same with the store left out; at least what is of no interest once that is sure. */
  private freeCostOf(trips: readonly Trip[], below: number): number {
    let cost = this.tripCostOf(trips);
    let lackingCost = this.leastCosts.reduce((sum, least) => sum + least, 0);
    for (const i of this.quickFirst) {
      lackingCost -= this.leastCosts[i]!;
      if (below <= cost + lackingCost) return below;
      const known = this.knownBelow(i, trips, below - cost - lackingCost);
      if (!known) return below;
      cost += known.cost;
    }
    return cost;
  }

  /**
   * The trips as one item would have them: those on which others buy cost it nothing, all others on
   * some days as much as they cost.
   */
  asLiked(i: number, trips: readonly Trip[], others: readonly Trip[]): readonly Trip[] {
    const all = this.withOrdered(merged(merged(this.days, trips), others));
    const stops = this.stopsOf(i, all).map((stop) => {
      const { supplier } = this.items[i]!.item.offers[stop.offer]!;
      const isThere = others.some((trip) => trip.day === stop.day && trip.supplier === supplier);
      return isThere || stop.orderedBags !== undefined
        ? stop
        : { ...stop, cost: this.problem.suppliers[supplier]!.tripCost };
    });
    const of = this.items[i]!;
    const mine = purchasesOf(of, i, stops, this.cheapest(of, stops));
    return merged(
      others,
      mine.map(({ supplier, day }) => ({ supplier, day })),
    );
  }

  /** The trips on which any but one item is bought. */
  tripsWithout(i: number, trips: readonly Trip[]): readonly Trip[] {
    const bought = this.freely(trips)
      .filter((_, k) => k !== i)
      .flat();
    return trips.filter((trip) => bought.some((each) => isOf(each, trip)));
  }

  /** The plan that goes by these trips. Those on which nothing is bought are left out. */
  planOf(others: readonly Trip[]): BuyingPlan {
    const trips = this.withOrdered(others);
    const { purchases } = this.isTogether ? this.pricedTogether(trips) : this.bought(trips);
    const all = purchases.flat();
    const used = trips.filter((trip) => all.some((each) => isOf(each, trip)));
    const feedCost = all.reduce((sum, { cost }) => sum + cost, 0);
    const tripCost = this.tripCostOf(used);
    return {
      trips: used,
      purchases: all.sort((a, b) => a.day - b.day || a.supplier - b.supplier || a.item - b.item),
      ...{ feedCost, tripCost, cost: feedCost + tripCost },
      short: this.items.flatMap((of, item) => shortOf(of, item, purchases[item]!)),
      overKg: this.overKg(used, purchases),
    };
  }

  /** What is bought on given trips, and what that costs with its fines. */
  private bought(trips: readonly Trip[], priced?: Priced): Bought {
    const purchases = this.freely(trips, priced);
    return this.overKg(trips, purchases) <= TINY_KG
      ? { purchases, cost: this.fined(trips, purchases) }
      : this.withinStore(trips, purchases, { priced });
  }

  /**
   * The same where prices go by all bags of a trip: bought at first as if every trip reached the
   * lowest price, then at what the trips come to; the cheapest counts.
   */
  private pricedTogether(trips: readonly Trip[]): Bought {
    let best: Bought | undefined;
    let priced: Priced = () => this.mostBags;
    for (let round = 0; round < PRICED_ROUNDS; round++) {
      const { purchases } = this.bought(trips, priced);
      const bags = bagsByTrip(purchases);
      const paid = purchases.map((each, i) => each.map((one) => this.paidTogether(i, one, bags)));
      const cost = this.fined(trips, paid) + this.tripCostOf(trips);
      if (!best || cost < best.cost) best = { purchases: paid, cost };
      priced = bags;
    }
    return best!;
  }

  /** A purchase at the price that all bags of its trip have. */
  private paidTogether(i: number, one: Purchase, bags: Priced): Purchase {
    if (!this.problem.suppliers[one.supplier]!.countsTogether) return one;
    return { ...one, cost: this.items[i]!.item.offers[one.offer]!.costOf(one.bags, bags(one)) };
  }

  private tripCostOf = (trips: readonly Trip[]): number =>
    trips.reduce((sum, { supplier }) => sum + this.problem.suppliers[supplier]!.tripCost, 0);

  private known(i: number, trips: readonly Trip[], priced?: Priced): Known {
    const stops = this.stopsOf(i, trips, priced);
    const key = keyOfStops(i, stops);
    const known = this.found.get(key);
    if (known?.best) return { stops, best: known.best };
    const best = this.cheapest(this.items[i]!, stops);
    this.found.set(key, { best, atLeast: best.cost });
    return { stops, best };
  }

  /** What an item is bought for at least cost; undefined where that is no less than a cost. */
  private knownBelow(i: number, trips: readonly Trip[], below: number): Reached | undefined {
    const stops = this.stopsOf(i, trips);
    const key = keyOfStops(i, stops);
    const known = this.found.get(key);
    if (known && (known.best || below <= known.atLeast)) return known.best;
    const { fines, ways } = this;
    const best = bestPurchases(this.items[i]!, stops, fines, { ways, below });
    this.found.set(key, { best, atLeast: best ? best.cost : below });
    return best;
  }

  private cheapest = (of: ItemDays, stops: readonly Stop[]): Reached =>
    bestPurchases(of, stops, this.fines, { ways: this.ways })!;

  /** The trips on which buying an item is of use, in the order of their days. */
  private stopsOf(i: number, trips: readonly Trip[], priced?: Priced): Stop[] {
    const of = this.items[i]!;
    const stops: Stop[] = [];
    for (const { supplier, day } of trips) {
      const ordered = this.orderedOf(i, { supplier, day });
      for (const o of this.largestFirst[i]!) {
        const offer = of.item.offers[o]!;
        if (offer.supplier !== supplier) continue;
        const orderedBags = ordered.find((each) => each.offer === o)?.bags;
        if (orderedBags !== undefined)
          stops.push({ day, offer: o, cost: 0, roomKg: Infinity, orderedBags });
        // What was ordered of a feed for a trip is all of it that is bought on it.
        if (0 < ordered.length || !isFetchedOn(of, supplier, day)) continue;
        const keepsKg = servesUntilKg(of, offer, day);
        if (keepsKg - TINY_KG <= Math.max(dueBeforeKg(of, day), of.stockServesKg)) continue;
        const stop = { day, offer: o, cost: 0, roomKg: Infinity };
        stops.push(
          priced && this.problem.suppliers[supplier]!.countsTogether
            ? { ...stop, pricedAsBags: priced({ supplier, day }) }
            : stop,
        );
      }
    }
    return stops;
  }

  private orderedOf(i: number, trip: Trip): readonly Ordered[] {
    if (this.orderedTrips.length === 0) return NOTHING;
    return this.problem.ordered!.filter((each) => each.item === i && isOf(each, trip));
  }

  private freely = (trips: readonly Trip[], priced?: Priced): Purchase[][] =>
    this.items.map((of, i) => {
      const { stops, best } = this.known(i, trips, priced);
      return purchasesOf(of, i, stops, best);
    });

  /** The items in turn, each in the room that the others leave, the one with most feed first. */
  private withinStore(
    trips: readonly Trip[],
    freely: readonly Purchase[][],
    { priced, below = Infinity }: { readonly priced?: Priced | undefined; readonly below?: number },
  ): Bought {
    const { storeKg } = this.problem;
    const days = daysOf(trips);
    const purchases = [...freely];
    const stocks = this.items.map((of, i) => stocksKg(of, purchases[i]!, days));
    const largest = this.items
      .map((_, i) => i)
      .sort((a, b) => Math.max(...stocks[b]!) - Math.max(...stocks[a]!));
    const costs = this.items.map((_, i) => this.known(i, trips, priced).best.cost);
    let sum = costs.reduce((all, each) => all + each, 0);
    let cost = Infinity;
    let best = purchases;
    for (let round = 0; round < ROUNDS; round++) {
      for (const i of largest) {
        const of = this.items[i]!;
        const allKg = days.map((_, d) => stocks.reduce((sum, each) => sum + each[d]!, 0));
        // What lies in the store on no day that is too full need not make room.
        if (!days.some((_, d) => storeKg + TINY_KG < allKg[d]! && TINY_KG < stocks[i]![d]!))
          continue;
        const room = days.map((_, d) => Math.max(0, storeKg - allKg[d]! + stocks[i]![d]!));
        const mine = this.stopsOf(i, trips, priced);
        const stops: Stop[] = [];
        for (let d = 0, k = 0; d < days.length; d++) {
          stops.push({ day: days[d]!, offer: -1, cost: 0, roomKg: Infinity });
          for (; mine[k]?.day === days[d]; k++) stops.push({ ...mine[k]!, roomKg: room[d]! });
        }
        const { fines, ways } = this;
        const others = sum - costs[i]!;
        // Where nothing of it need lie outside, others will not make room for less.
        const limit = hasRoomFor(of, days, mine, room) ? below - others : Infinity;
        const found = bestPurchases(of, stops, fines, { ways, below: limit });
        if (!found) return { cost: Math.min(cost, below), purchases: best };
        sum = others + found.cost;
        costs[i] = found.cost;
        purchases[i] = purchasesOf(of, i, stops, found);
        stocks[i] = stocksKg(of, purchases[i]!, days);
      }
      const now = this.fined(trips, purchases);
      if (now < cost) best = [...purchases];
      // Once all have room, another round hardly pays.
      if (cost <= now || this.overKg(trips, purchases) <= TINY_KG)
        return { cost: Math.min(cost, now), purchases: best };
      cost = now;
    }
    return { cost, purchases: best };
  }

  private fined(trips: readonly Trip[], purchases: readonly Purchase[][]): number {
    let cost = this.fines.overPerKg * this.overKg(trips, purchases);
    purchases.forEach((each, i) => {
      for (const { cost: paid, bags, day } of each)
        cost += paid + SOON_COST * bags * (this.problem.days + 1 - day);
      for (const { kg } of shortOf(this.items[i]!, i, each)) cost += this.fines.shortPerKg * kg;
    });
    return cost;
  }

  private overKg(trips: readonly Trip[], purchases: readonly Purchase[][]): number {
    const { storeKg } = this.problem;
    if (storeKg === Infinity) return 0;
    const days = daysOf(trips);
    const stocks = this.items.map((of, i) => stocksKg(of, purchases[i]!, days));
    let most = 0;
    for (let d = 0; d < days.length; d++) {
      let sum = 0;
      for (const each of stocks) sum += each[d]!;
      most = Math.max(most, sum);
    }
    return Math.max(0, most - storeKg);
  }
}

const NOTHING: readonly Ordered[] = [];

interface Bought {
  readonly cost: number;
  readonly purchases: readonly Purchase[][];
}

/** How many bags the prices of a trip go by. */
type Priced = (trip: Trip) => number;

/** Rounds in which feeds are bought anew at the prices that all of a trip come to. */
const PRICED_ROUNDS = 2;

/** Bags of all feeds by trip. */
function bagsByTrip(purchases: readonly (readonly Purchase[])[]): Priced {
  const all = new Map<string, number>();
  const keyOf = ({ supplier, day }: Trip): string => `${day}.${supplier}`;
  for (const one of purchases.flat()) all.set(keyOf(one), (all.get(keyOf(one)) ?? 0) + one.bags);
  return (trip) => all.get(keyOf(trip)) ?? 0;
}

interface Known {
  readonly stops: readonly Stop[];
  readonly best: Reached;
}

/** What is known of an item on some stops: the best, or that it costs no less than something. */
interface Found {
  readonly best: Reached | undefined;
  readonly atLeast: number;
}

function keyOfStops(i: number, stops: readonly Stop[]): string {
  let key = `${i}`;
  for (const { day, offer, pricedAsBags } of stops)
    key += pricedAsBags === undefined ? `,${day}.${offer}` : `,${day}.${offer}.${pricedAsBags}`;
  return key;
}

const isOf = (a: Trip, b: Trip): boolean => a.day === b.day && a.supplier === b.supplier;
