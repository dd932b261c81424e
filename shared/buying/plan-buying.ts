import { seededRandom } from '../schedule/random.js';
import type { BuyingPlan, BuyingProblem, Trip } from './buying-problem.js';
import { firstTrips } from './first-trips.js';
import { TripCosts, type Costed } from './trip-costs.js';

/** How long the search goes on: sets of trips that it costs. Twice as many save 0.06 % of a year's feed. */
const TRIES = 200;
/** Costing a set of trips takes so many times as long where a seller counts all feeds together. */
const TOGETHER_TAKES = 3;
/** Plans that are begun with, out of those with the fewest trips and with more and smaller ones. */
const BEGUN = 3;
const KEEPS_SHARES = [1, 0.6, 0.4];
/** Trips that are changed at once, at most, when no single change helps any more. */
const SHAKEN = 4;
/** What it counts to work out the trips that one item would have. */
const LIKED_TRIES = 5;
/** Sets of trips costed at the end, to make each as late as it can be. */
const SETTLING_TRIES = 150;
const DELAYS = [14, 7, 3, 1];
const SHIFTS = [1, -1, 2, -2, 3, -3, 5, -5, 7, -7, 10, -10, 14, -14, 21, -21, 28, -28];

/**
 * What feed to buy on which trips, at least cost over prices, quantities from which they fall, and
 * trips that many feeds share; nothing runs out, is fed stale, or lies over what the store takes.
 *
 * Trips are looked for first. To begin with, each is as late as something allows: the fewest trips
 * that will do. Then a trip is left out, moved, added or made to another supplier as long as that
 * lowers the cost, and after that from plans that are shaken a little. For given trips the purchases
 * of each feed are exact (`bestPurchases`), and feeds make room for each other where the store is
 * small. The same problem has the same plan.
 *
 * @param tries sets of trips to cost; more seldom gives a worse plan, and then by little: where the
 *   search is cut off, a trip on which nothing is bought falls away
 * @param kept trips of an earlier plan: they stay, as far as they can, unless others save as much
 *   as `KEEPS_FOR` of the cost
 */
export function planBuying(
  problem: BuyingProblem,
  tries = TRIES,
  kept: readonly Trip[] = [],
): BuyingPlan {
  const costs = new TripCosts(problem);
  const search = new Search(costs, costs.isTogether ? tries / TOGETHER_TAKES : tries);
  const random = seededRandom(1);
  const liked = [undefined, ...problem.suppliers.keys()];
  const begun: Costed[] = [];
  for (const share of KEEPS_SHARES)
    for (const supplier of liked) {
      const trips = firstTrips(problem, costs.items, supplier, share);
      begun.push(costs.costed(trips, begun[BEGUN - 1]?.cost));
      begun.sort((a, b) => a.cost - b.cost);
      begun.splice(BEGUN);
    }
  let best = begun
    .map((each) => search.descend(each))
    .reduce((least, each) => (each.cost < least.cost ? each : least));
  while (0 < search.left) {
    const found = search.descend(costs.costed(search.shake(best.trips, random)));
    if (found.cost < best.cost) best = found;
  }
  const settled = search.settle(best);
  const still = kept.filter(({ supplier, day }) => problem.suppliers[supplier]!.days[day] === 1);
  if (still.length === 0) return costs.planOf(settled.trips);
  const isKept = ({ cost }: Costed): boolean => cost <= (1 + KEEPS_FOR) * settled.cost;
  const asWas = search.stay(costs.costed(still), settled);
  const stayed = isKept(asWas) ? asWas : search.stay(asTheyWere(costs, still, settled), settled);
  return costs.planOf((isKept(stayed) ? stayed : settled).trips);
}

/**
 * Kept trips, with what a day that went by asks for besides: what is wanted before the first of them,
 * and the days that the year has gained, for which the last ones are as the best plan has them.
 */
function asTheyWere(costs: TripCosts, kept: readonly Trip[], { trips }: Costed): Costed {
  const sooner = trips.filter(({ day }) => day < kept[0]!.day);
  const ways = Array.from({ length: Math.min(LAST_AGAIN, kept.length - 1) + 1 }, (_, dropped) => {
    const stay = kept.slice(0, kept.length - dropped);
    return [...stay, ...trips.filter(({ day }) => stay.at(-1)!.day < day)];
  });
  return [kept, ...ways, ...ways.map((way) => [...sooner, ...way])]
    .map((way) => costs.costed(way))
    .reduce((least, each) => (each.cost < least.cost ? each : least));
}

/** So many of the last trips of a year are made anew, at most, as its end moves on. */
const LAST_AGAIN = 3;

/**
 * A share of what all feed costs for which nobody lays out the trips of a year anew. It keeps the
 * search from going back and forth between plans as good as each other, and changes no price.
 */
const KEEPS_FOR = 0.01;

/** Ways to change a set of trips, each worked out when it is tried; some turn out to be none. */
type Changes = Iterable<() => readonly Trip[] | undefined>;

class Search {
  private readonly known = new Map<string, number>();

  constructor(
    private readonly costs: TripCosts,
    public left: number,
  ) {}

  /** Takes every change of one trip that lowers the cost, until none does. */
  descend(from: Costed): Costed {
    return this.improve(this.asItemsLike(from), (trips, changedDay) =>
      this.changes(trips, changedDay),
    );
  }

  /** Makes each trip as late as costs no more: feed is fresher, and money stays longer at home. */
  settle(from: Costed): Costed {
    this.left = SETTLING_TRIES;
    return this.improve(from, (trips) => this.delays(trips));
  }

  /**
   * Trips as they were, but for changes that save much: of feed that runs out, or goes stale. Much is a
   * share of what the best plan costs: a feed that runs out makes every other change look small.
   */
  stay(from: Costed, best: Costed): Costed {
    this.left = SETTLING_TRIES;
    return this.improve(
      from,
      (trips, changedDay) => this.changes(trips, changedDay),
      KEEPS_FOR * best.cost,
    );
  }

  private improve(
    from: Costed,
    changes: (trips: readonly Trip[], changedDay: number) => Changes,
    leastGain = LEAST_GAIN,
  ): Costed {
    let at = from;
    let changedDay = 0;
    for (let isBetter = true; isBetter && 0 < this.left;) {
      isBetter = false;
      for (const change of changes(at.trips, changedDay)) {
        const trips = change();
        if (!trips || this.left <= 0) continue;
        const cost = this.costOf(trips, at.cost - leastGain);
        if (at.cost - leastGain <= cost) continue;
        changedDay = firstChangedDay(at.trips, trips);
        at = { trips, cost };
        isBetter = true;
        break;
      }
    }
    return at;
  }

  /** Each item in turn has the trips that suit it best beside those of the others. */
  private asItemsLike(from: Costed): Costed {
    let at = from;
    for (let i = 0; i < this.costs.items.length && 0 < this.left; i++) {
      this.left -= LIKED_TRIES;
      const liked = this.costs.asLiked(i, at.trips, this.costs.tripsWithout(i, at.trips));
      const cost = this.costOf(liked, at.cost - LEAST_GAIN);
      if (cost < at.cost - LEAST_GAIN) at = { trips: liked, cost };
    }
    return at;
  }

  /** That of trips which were costed before is known, as far as it is of interest. */
  private costOf(trips: readonly Trip[], below: number): number {
    let key = '';
    for (const { supplier, day } of trips) key += `${day}.${supplier},`;
    const known = this.known.get(key);
    if (known !== undefined && below <= known) return known;
    if (known === undefined) this.left--;
    const cost = this.costs.costOf(trips, below);
    this.known.set(key, cost);
    return cost;
  }

  shake(trips: readonly Trip[], random: () => number): readonly Trip[] {
    this.left--;
    let shaken = trips;
    for (let n = 1 + Math.floor(SHAKEN * random()); 0 < n; n--) {
      const pick = shaken[Math.floor(random() * shaken.length)];
      const other = this.randomTrip(random);
      const rest = random() < 0.5 ? shaken.filter((trip) => trip !== pick) : shaken;
      shaken = (other && added(rest, other)) ?? rest;
    }
    return shaken;
  }

  private randomTrip(random: () => number): Trip | undefined {
    const { suppliers, days } = this.costs.problem;
    const supplier = Math.floor(random() * suppliers.length);
    const day = this.openDay(supplier, Math.floor(random() * days));
    return day === undefined ? undefined : { supplier, day };
  }

  /**
   * Ways to change a set of trips by one, those that save most first. Those that come before the day
   * of the last change were tried just now: they come last.
   */
  private *changes(trips: readonly Trip[], changedDay: number): Changes {
    const { suppliers } = this.costs.problem;
    for (const trip of trips) yield () => without(trips, trip);
    const tried = trips.filter(({ day }) => day < changedDay).length;
    for (let n = 0; n < trips.length; n++) {
      const k = (tried + n) % trips.length;
      const trip = trips[k]!;
      for (const by of SHIFTS) {
        const day = this.openDay(trip.supplier, trip.day + by, Math.sign(by));
        if (day !== undefined) yield () => added(without(trips, trip), { ...trip, day });
      }
      for (let supplier = 0; supplier < suppliers.length; supplier++) {
        if (supplier === trip.supplier) continue;
        const day = this.openDay(supplier, trip.day, -1);
        if (day === undefined) continue;
        yield () => added(without(trips, trip), { supplier, day });
        yield () => added(trips, { supplier, day });
        const later = this.openDay(supplier, trip.day + 1);
        if (later !== undefined) yield () => added(without(trips, trip), { supplier, day: later });
      }
      const next = trips.slice(k + 1).find(({ supplier }) => supplier === trip.supplier);
      if (!next) continue;
      const day = this.openDay(trip.supplier, (trip.day + next.day) >> 1, -1);
      if (day === undefined) continue;
      yield () => added(trips, { ...trip, day });
      yield () => added(without(without(trips, trip), next), { ...trip, day });
    }
  }

  private *delays(trips: readonly Trip[]): Changes {
    for (const trip of trips.toReversed())
      for (const by of DELAYS) {
        const day = this.openDay(trip.supplier, trip.day + by);
        if (day !== undefined) yield () => added(without(trips, trip), { ...trip, day });
      }
  }

  /** The first open day from one on, forward or back. */
  private openDay(supplier: number, from: number, step = 1): number | undefined {
    const { days } = this.costs.problem.suppliers[supplier]!;
    for (let day = from; 0 <= day && day < days.length; day += step || 1)
      if (days[day] === 1) return day;
    return undefined;
  }
}

/** Below it two plans cost the same: only how early feed is bought differs. */
const LEAST_GAIN = 1e-9;

/** The day of the first trip that two sets do not share; 0 where the second only lost its last. */
const firstChangedDay = (before: readonly Trip[], after: readonly Trip[]): number =>
  after.find(({ day, supplier }, k) => day !== before[k]?.day || supplier !== before[k]?.supplier)
    ?.day ?? 0;

const without = (trips: readonly Trip[], trip: Trip): readonly Trip[] =>
  trips.filter((each) => each !== trip);

/** With one more trip, in the order of days; undefined where it is there already. */
function added(trips: readonly Trip[], trip: Trip): readonly Trip[] | undefined {
  if (trips.some(({ supplier, day }) => supplier === trip.supplier && day === trip.day))
    return undefined;
  return [...trips, trip].sort((a, b) => a.day - b.day || a.supplier - b.supplier);
}
