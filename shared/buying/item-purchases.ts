import type { Purchase } from './buying-problem.js';
import { dueBeforeKg, served, untilKg, type ItemDays } from './item-days.js';

/** A trip on which an item can be bought, or a day on which only the room in the store counts. */
export interface Stop {
  readonly day: number;
  /** Its place among the offers of the item; -1 where nothing of it is sold. */
  readonly offer: number;
  /** Added when something is bought; the trips of a plan are paid for already. */
  readonly cost: number;
  /** Room in the store for this item, kg. */
  readonly roomKg: number;
  /** Bags of the whole trip that its price goes by, where they are more than those of the item. */
  readonly pricedAsBags?: number;
}

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

const TINY_KG = 1e-7;
/** Of two ways that cost the same the one that buys later is taken: it is fresher. */
export const SOON_COST = 1e-7;

/**
 * The cheapest purchases of one item on given stops, exact by dynamic programming. A state is the
 * place in the line of needs up to which feed is bought; one that costs more and reaches less is
 * dropped, where room in the store is no matter. On a stop are tried: just enough for each later
 * stop, all that keeps, and each quantity from which a lower price holds. Between those the price is
 * straight, so that a bag more on one stop and one less on another is never worse in one direction.
 *
 * @param stops by day
 */
export function bestPurchases(of: ItemDays, stops: readonly Stop[], fines: Fines): Reached {
  const isRoomKnown = stops.some(({ roomKg }) => roomKg < Infinity);
  const dueKg = stops.map(({ day }) => dueBeforeKg(of, day));
  const allKg = of.sumKg.at(-1)!;
  dueKg.push(allKg);
  let states: Reached[] = [{ kg: of.stockServesKg, cost: 0, from: undefined, stop: -1, bags: 0 }];
  stops.forEach((stop, s) => {
    const next = isRoomKnown ? new AllReached() : new BestReached();
    const fedKg = of.sumKg[stop.day]!;
    const offer = of.item.offers[stop.offer];
    const keepsKg = offer ? untilKg(of.sumKg, stop.day + offer.keepsDays) : 0;
    const fillsUp = stops[s + 1]?.day === stop.day;
    const soon = SOON_COST * (of.sumKg.length - stop.day);
    for (const state of states) {
      const base = notShort(state, dueKg[s]!, fines);
      next.add(
        base.kg,
        base.cost + overFine(base.kg - fedKg, stop, fines),
        base.from,
        base.stop,
        base.bags,
      );
      if (!offer) continue;
      const trying = {
        keepsKg,
        dueKg,
        s,
        stop,
        fedKg,
        bagKg: offer.bagKg,
        breaks: offer.breaks,
        fillsUp,
      };
      for (const bags of bagsToTry(base.kg, trying)) {
        const broughtKg = bags * offer.bagKg;
        const cost =
          base.cost +
          stop.cost +
          offer.costOf(bags, stop.pricedAsBags) +
          soon * bags +
          overFine(base.kg + broughtKg - fedKg, stop, fines);
        next.add(served(base.kg, broughtKg, keepsKg), cost, base, s, bags);
      }
    }
    states = next.states();
  });
  let best: Reached | undefined;
  for (const state of states) {
    const end = notShort(state, allKg, fines);
    if (!best || end.cost < best.cost) best = end;
  }
  return best!;
}

function notShort(state: Reached, dueKg: number, { shortPerKg }: Fines): Reached {
  const missing = dueKg - state.kg;
  if (missing <= TINY_KG) return state;
  return { kg: dueKg, cost: state.cost + shortPerKg * missing, from: state, stop: -1, bags: 0 };
}

function overFine(stockKg: number, { roomKg }: Stop, { overPerKg }: Fines): number {
  const over = stockKg - roomKg;
  return over <= TINY_KG ? 0 : overPerKg * over;
}

/** The cheapest way to each place: those that reach less for no less are dropped. */
class BestReached {
  /** By place, and so by cost. */
  private readonly front: Reached[] = [];

  add(kg: number, cost: number, from: Reached | undefined, stop: number, bags: number): void {
    const { front } = this;
    let at = front.length;
    while (0 < at && kg - TINY_KG <= front[at - 1]!.kg) at--;
    if (at < front.length && front[at]!.cost <= cost) return;
    let first = at;
    while (0 < first && cost <= front[first - 1]!.cost) first--;
    // One at the same place that costs more goes as well.
    const isSame = at < front.length && front[at]!.kg <= kg + TINY_KG;
    front.splice(first, at - first + (isSame ? 1 : 0), { kg, cost, from, stop, bags });
  }

  states = (): Reached[] => this.front;
}

/** The cheapest way to each place. Where room counts, less in the store can be worth its money. */
class AllReached {
  private readonly byPlace = new Map<number, Reached>();

  add(kg: number, cost: number, from: Reached | undefined, stop: number, bags: number): void {
    const place = Math.round(kg * PLACES_A_KG);
    const known = this.byPlace.get(place);
    if (!known || cost < known.cost) this.byPlace.set(place, { kg, cost, from, stop, bags });
  }

  states = (): Reached[] => {
    const all = [...this.byPlace.values()];
    return all.length <= MOST_STATES
      ? all
      : all.sort((a, b) => a.cost - b.cost).slice(0, MOST_STATES);
  };
}

const PLACES_A_KG = 1e5;
/** Cheapest ways that are followed where all would be too many. */
const MOST_STATES = 60;

interface Trying {
  readonly keepsKg: number;
  readonly dueKg: readonly number[];
  readonly s: number;
  readonly stop: Stop;
  readonly fedKg: number;
  readonly bagKg: number;
  readonly breaks: readonly number[];
  /** Another offer comes on the same day, whose bags can fill up the last one. */
  readonly fillsUp: boolean;
}

/** Whole bags worth trying from a place in the line. */
function bagsToTry(fromKg: number, of: Trying): number[] {
  const { keepsKg, dueKg, s, stop, fedKg, bagKg, breaks, fillsUp } = of;
  const lacking = keepsKg - fromKg;
  if (lacking <= TINY_KG) return [];
  const most = Math.ceil(lacking / bagKg - TINY_KG);
  const tries = [most];
  const also = (bags: number): void => {
    if (0 < bags && !tries.includes(bags)) tries.push(bags);
  };
  also(most - 1);
  for (let later = s + 1; later < dueKg.length; later++) {
    const bags = Math.ceil((dueKg[later]! - fromKg) / bagKg - TINY_KG);
    if (most < bags) break;
    also(bags);
    if (fillsUp) also(bags - 1);
  }
  breaks.forEach(also);
  if (stop.roomKg < Infinity) {
    const bags = Math.floor((stop.roomKg + fedKg - fromKg) / bagKg + TINY_KG);
    if (bags < most) also(bags);
  }
  return tries;
}

/** The purchases of a way, the first one first. */
export function purchasesOf(
  of: ItemDays,
  item: number,
  stops: readonly Stop[],
  best: Reached,
): Purchase[] {
  const purchases: Purchase[] = [];
  for (let at: Reached | undefined = best; at; at = at.from) {
    if (at.bags === 0) continue;
    const { day, offer, pricedAsBags } = stops[at.stop]!;
    const { supplier, bagKg, costOf } = of.item.offers[offer]!;
    purchases.unshift({
      ...{ day, supplier, item, offer, bags: at.bags },
      cost: costOf(at.bags, pricedAsBags),
      wasteKg: Math.max(0, at.from!.kg + at.bags * bagKg - at.kg),
    });
  }
  return purchases;
}
