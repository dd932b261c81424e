import type { Offer, Purchase } from './buying-problem.js';
import { AllReached, BestReached, TINY_KG, Ways, type Fines, type Reached } from './bought-ways.js';
import { dueBeforeKg, served, servesUntilKg, untilKg, type ItemDays } from './item-days.js';

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
  /** Bags that were ordered: so many are bought, no more and no fewer. */
  readonly orderedBags?: number;
}

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
 * @param below a cost that is of no interest any more: what cannot end under it is not followed
 * @returns undefined where no way costs less than that
 */
export function bestPurchases(
  of: ItemDays,
  stops: readonly Stop[],
  fines: Fines,
  { ways = new Ways(), below = Infinity }: { ways?: Ways; below?: number } = {},
): Reached | undefined {
  const isRoomKnown = stops.some(({ roomKg }) => roomKg < Infinity);
  const dueKg = stops.map(({ day }) => dueBeforeKg(of, day));
  const allKg = of.sumKg.at(-1)!;
  dueKg.push(allKg);
  ways.begin(of.stockServesKg);
  ways.follow(below, allKg, of.leastPerKg);
  let states = [0];
  const tries: number[] = [];
  for (let s = 0; s < stops.length; s++) {
    const stop = stops[s]!;
    const next = isRoomKnown ? new AllReached(ways) : new BestReached(ways);
    const fedKg = of.sumKg[stop.day]!;
    const offer = of.item.offers[stop.offer];
    const keepsKg = offer ? stopServesKg(of, offer, stop) : 0;
    const soon = SOON_COST * (of.sumKg.length - stop.day);
    const fillsUp = stops[s + 1]?.day === stop.day;
    const trying = offer && { offer, keepsKg, dueKg, s, stop, fedKg, fillsUp };
    for (let k = 0; k < states.length; k++) {
      const base = ways.notShort(states[k]!, dueKg[s]!, fines);
      const baseKg = ways.kg[base]!;
      const baseCost = ways.cost[base]!;
      if (stop.orderedBags === undefined) {
        const cost = baseCost + overFine(baseKg - fedKg, stop, fines);
        if (ways.isOfUse(baseKg, cost))
          next.add(ways.keep(baseKg, cost, ways.from[base]!, ways.stop[base]!, ways.bags[base]!));
      }
      if (!trying) continue;
      const count = bagsToTry(baseKg, trying, tries);
      for (let t = 0; t < count; t++) {
        const bags = tries[t]!;
        const broughtKg = bags * offer.bagKg;
        const cost =
          baseCost +
          stop.cost +
          offer.costOf(bags, stop.pricedAsBags) +
          soon * bags +
          overFine(baseKg + broughtKg - fedKg, stop, fines);
        const kg = served(baseKg, broughtKg, keepsKg);
        if (ways.isOfUse(kg, cost)) next.add(ways.keep(kg, cost, base, s, bags));
      }
    }
    states = next.states();
    if (states.length === 0) return undefined;
  }
  let best = -1;
  for (const state of states) {
    const end = ways.notShort(state, allKg, fines);
    if (best === -1 || ways.cost[end]! < ways.cost[best]!) best = end;
  }
  return ways.cost[best]! < below ? ways.reached(best) : undefined;
}

/** What was ordered is there, and feeds as long as it keeps, be it fetched sooner than it should. */
const stopServesKg = (of: ItemDays, offer: Offer, { day, orderedBags }: Stop): number =>
  orderedBags === undefined
    ? servesUntilKg(of, offer, day)
    : untilKg(of.sumKg, day + offer.keepsDays);

function overFine(stockKg: number, { roomKg }: Stop, { overPerKg }: Fines): number {
  const over = stockKg - roomKg;
  return over <= TINY_KG ? 0 : overPerKg * over;
}

interface Trying {
  readonly offer: Offer;
  readonly keepsKg: number;
  readonly dueKg: readonly number[];
  readonly s: number;
  readonly stop: Stop;
  readonly fedKg: number;
  /** Another offer comes on the same day, whose bags can fill up the last one. */
  readonly fillsUp: boolean;
}

/**
 * Whole bags worth trying from a place in the line.
 *
 * @param tries they are written to
 * @returns how many they are
 */
function bagsToTry(fromKg: number, of: Trying, tries: number[]): number {
  const { keepsKg, dueKg, s, stop, fedKg, fillsUp } = of;
  const { bagKg, breaks } = of.offer;
  if (stop.orderedBags !== undefined) return withTry(tries, 0, stop.orderedBags);
  const lacking = keepsKg - fromKg;
  if (lacking <= TINY_KG) return 0;
  const most = Math.ceil(lacking / bagKg - TINY_KG);
  tries[0] = most;
  let count = withTry(tries, 1, most - 1);
  let last = 0;
  for (let later = s + 1; later < dueKg.length; later++) {
    const bags = Math.ceil((dueKg[later]! - fromKg) / bagKg - TINY_KG);
    if (most < bags) break;
    // What is due never falls: the same number again was tried just now.
    if (bags <= last) continue;
    last = bags;
    count = withTry(tries, count, bags);
    if (fillsUp) count = withTry(tries, count, bags - 1);
  }
  for (let k = 0; k < breaks.length; k++) count = withTry(tries, count, breaks[k]!);
  if (stop.roomKg < Infinity) {
    const bags = Math.floor((stop.roomKg + fedKg - fromKg) / bagKg + TINY_KG);
    if (bags < most) count = withTry(tries, count, bags);
  }
  return count;
}

function withTry(tries: number[], count: number, bags: number): number {
  if (bags <= 0) return count;
  for (let k = 0; k < count; k++) if (tries[k] === bags) return count;
  tries[count] = bags;
  return count + 1;
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
