import type { BuyingProblem, FeedItem, Offer } from './buying-problem.js';
import { soonFed } from './soon-fed.js';

/**
 * The needs of one item as sums, and the day by which each must have been bought. Needs are served
 * in the order of their days by what was bought first: a place in that line is a sum of needs, kg.
 */
export interface ItemDays {
  readonly item: FeedItem;
  /** Need of the days before each day; one longer than the days. */
  readonly sumKg: Float64Array;
  /** First day on which any of its suppliers can be reached; the number of days where none can. */
  readonly firstTrip: number;
  /** Served by the feed in the store, as far as it keeps. */
  readonly stockServesKg: number;
  readonly handDays: number;
  /** By seller and day, the last day for which it may be fetched already. */
  readonly soon: readonly Int32Array[] | undefined;
  /** No way of buying costs less a kilogram of need. */
  readonly leastPerKg: number;
}

export function itemDays(problem: BuyingProblem, item: FeedItem): ItemDays {
  const sumKg = new Float64Array(problem.days + 1);
  for (let day = 0; day < problem.days; day++) sumKg[day + 1] = sumKg[day]! + item.needKg[day]!;
  let firstTrip = problem.days;
  for (const { supplier } of item.offers) {
    const first = problem.suppliers[supplier]!.days.indexOf(1);
    if (0 <= first) firstTrip = Math.min(firstTrip, first);
  }
  let stockServesKg = 0;
  for (const lot of [...item.stock].sort((a, b) => a.untilDay - b.untilDay))
    stockServesKg = served(stockServesKg, lot.kg, untilKg(sumKg, lot.untilDay));
  const { handDays } = problem;
  return {
    ...{ item, sumKg, firstTrip, stockServesKg, handDays },
    soon: soonFed(problem, item),
    leastPerKg: leastPerKg(item),
  };
}

/** A little under the lowest price of all offers, as sums of a trip are rounded to the smallest coin. */
function leastPerKg({ offers }: FeedItem): number {
  const prices = offers.flatMap(({ bagKg, breaks, costOf }) =>
    [1, ...breaks].map((bags) => Math.max(0, costOf(bags) - 1) / (bags * bagKg)),
  );
  return prices.length === 0 ? 0 : Math.min(...prices);
}

/** Whether it may be fetched from a seller on a day. */
export const isFetchedOn = ({ soon }: ItemDays, supplier: number, day: number): boolean =>
  soon === undefined || 0 <= soon[supplier]![day]!;

/**
 * Needs that what is bought of an offer can serve, kg: as long as it keeps, and no later than it may be
 * fetched for, but for the rest of a bag.
 *
 * @param keepsDays of the offer, where it is not planned for all of them
 */
export function servesUntilKg(
  { sumKg, soon }: ItemDays,
  { bagKg, supplier, ...offer }: Offer,
  day: number,
  keepsDays = offer.keepsDays,
): number {
  const keepsKg = untilKg(sumKg, day + keepsDays);
  if (soon === undefined) return keepsKg;
  return Math.min(keepsKg, untilKg(sumKg, soon[supplier]![day]!) + bagKg);
}

/** Needs through a day, kg. */
export const untilKg = (sumKg: Float64Array, day: number): number =>
  sumKg[Math.max(0, Math.min(sumKg.length - 1, day + 1))]!;

/** The place in the line after a lot, of which nothing is fed beyond what it keeps for. */
export const served = (fromKg: number, lotKg: number, keepsUntilKg: number): number =>
  Math.min(fromKg + lotKg, Math.max(fromKg, keepsUntilKg));

/** Needs that must have been bought before the trips of a day, kg. */
export function dueBeforeKg({ sumKg, firstTrip, handDays }: ItemDays, day: number): number {
  const last = sumKg.length - 1;
  return sumKg[Math.min(last, day <= firstTrip ? day : day + handDays)]!;
}
