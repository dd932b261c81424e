import { Places } from './places.js';

/** What a kilogram that is missing, or lies outside the store, counts: more than any feed costs. */
export interface Fines {
  readonly shortPerKg: number;
  readonly overPerKg: number;
}

/** A way to have come so far along the line of needs. */
export interface Reached {
  readonly kg: number;
  readonly cost: number;
  readonly from: Reached | undefined;
  readonly stop: number;
  readonly bags: number;
}

/** Places closer than this are the same. */
export const TINY_KG = 1e-7;

/**
 * Ways along the line of needs, each by its number. Hundreds of thousands are thought of for one
 * plan: in lists of numbers they cost a fifth of what as many objects do.
 */
export class Ways {
  kg = new Float64Array(FIRST_WAYS);
  cost = new Float64Array(FIRST_WAYS);
  from = new Int32Array(FIRST_WAYS);
  stop = new Int32Array(FIRST_WAYS);
  bags = new Float64Array(FIRST_WAYS);
  readonly places = new Places();
  private count = 0;
  private below = Infinity;
  private endKg = 0;
  private leastPerKg = 0;

  /** Forgets all but one, in which nothing is bought. */
  begin(kg: number): void {
    this.count = 0;
    this.keep(kg, 0, -1, -1, 0);
  }

  /** From now on ways are of use that can reach the end of the line for less than a cost. */
  follow(below: number, endKg: number, leastPerKg: number): void {
    this.below = below;
    this.endKg = endKg;
    this.leastPerKg = leastPerKg;
  }

  /** Whether a way that came so far at a cost may end for less than is asked for. */
  isOfUse(kg: number, cost: number): boolean {
    const lackingKg = this.endKg - kg;
    return cost + (0 < lackingKg ? this.leastPerKg * lackingKg : 0) < this.below;
  }

  /**
   * Puts down a way behind all others. From there on it goes by its number: numbers with fractions
   * that are handed on are put into memory one by one.
   */
  keep(kg: number, cost: number, from: number, stop: number, bags: number): number {
    const at = this.count;
    if (at === this.kg.length) this.grow();
    this.kg[at] = kg;
    this.cost[at] = cost;
    this.from[at] = from;
    this.stop[at] = stop;
    this.bags[at] = bags;
    return this.count++;
  }

  /** Takes back the way that was put down last. */
  drop(): void {
    this.count--;
  }

  /** The way, or one from it that pays for what is missing up to a place. */
  notShort(way: number, dueKg: number, { shortPerKg }: Fines): number {
    const missing = dueKg - this.kg[way]!;
    if (missing <= TINY_KG) return way;
    return this.keep(dueKg, this.cost[way]! + shortPerKg * missing, way, -1, 0);
  }

  reached(way: number): Reached {
    const from = this.from[way]!;
    return {
      kg: this.kg[way]!,
      cost: this.cost[way]!,
      from: from === -1 ? undefined : this.reached(from),
      stop: this.stop[way]!,
      bags: this.bags[way]!,
    };
  }

  private grow(): void {
    const longer = <List extends Float64Array | Int32Array>(
      list: List,
      made: new (length: number) => List,
    ): List => {
      const twice = new made(2 * list.length);
      twice.set(list);
      return twice;
    };
    this.kg = longer(this.kg, Float64Array);
    this.cost = longer(this.cost, Float64Array);
    this.from = longer(this.from, Int32Array);
    this.stop = longer(this.stop, Int32Array);
    this.bags = longer(this.bags, Float64Array);
  }
}

const FIRST_WAYS = 1024;

/** The cheapest way to each place: those that reach less for no less are dropped. */
export class BestReached {
  /** By place, and so by cost. */
  private readonly front: number[] = [];

  constructor(private readonly ways: Ways) {}

  /** Takes the way that was put down last, where no other reaches as far for as little. */
  add(way: number): void {
    const { front, ways } = this;
    const kg = ways.kg[way]!;
    const cost = ways.cost[way]!;
    let at = front.length;
    while (0 < at && kg - TINY_KG <= ways.kg[front[at - 1]!]!) at--;
    if (at < front.length && ways.cost[front[at]!]! <= cost) return ways.drop();
    let first = at;
    while (0 < first && cost <= ways.cost[front[first - 1]!]!) first--;
    // One at the same place that costs more goes as well.
    const isSame = at < front.length && ways.kg[front[at]!]! <= kg + TINY_KG;
    const dropped = at - first + (isSame ? 1 : 0);
    if (dropped === 1) front[first] = way;
    else if (first === front.length) front.push(way);
    else front.splice(first, dropped, way);
  }

  states = (): number[] => this.front;
}

/** The cheapest way to each place. Where room counts, less in the store can be worth its money. */
export class AllReached {
  constructor(private readonly ways: Ways) {
    ways.places.begin();
  }

  /** Takes the way that was put down last, where it is the cheapest to its place. */
  add(way: number): void {
    const { cost, kg, places } = this.ways;
    const at = places.slotOf(Math.round(kg[way]! * PLACES_A_KG));
    const known = places.wayAt(at);
    if (known === -1) places.take(at, way);
    else if (cost[way]! < cost[known]!) places.put(at, way);
    else this.ways.drop();
  }

  states = (): number[] => {
    const all = this.ways.places.all();
    const { cost } = this.ways;
    return all.length <= MOST_STATES
      ? all
      : all.sort((a, b) => cost[a]! - cost[b]!).slice(0, MOST_STATES);
  };
}

const PLACES_A_KG = 1e5;
/** Cheapest ways that are followed where all would be too many. */
const MOST_STATES = 60;
