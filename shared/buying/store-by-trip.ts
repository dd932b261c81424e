import type { Purchase, Trip } from './buying-problem.js';
import { dueBeforeKg, served, untilKg, type ItemDays } from './item-days.js';
import type { Stop } from './item-purchases.js';

/** Less feed than this is none. */
export const TINY_KG = 1e-6;

/** How far along the line of needs feed is bought by the end of each trip, and by which. */
interface Walked {
  readonly day: number;
  readonly toKg: number;
  readonly wasteKg: number;
}

function walked(of: ItemDays, purchases: readonly Purchase[]): Walked[] {
  let kg = of.stockServesKg;
  return purchases.map(({ day, offer, bags }) => {
    const { bagKg, keepsDays } = of.item.offers[offer]!;
    kg = Math.max(kg, Math.min(dueBeforeKg(of, day), of.sumKg.at(-1)!));
    const to = served(kg, bags * bagKg, untilKg(of.sumKg, day + keepsDays));
    const wasteKg = kg + bags * bagKg - to;
    kg = to;
    return { day, toKg: to, wasteKg };
  });
}

/**
 * What lies in the store after the trips of each day and before its feeding, kg.
 *
 * @param purchases by day
 * @param days rising
 */
export function stocksKg(
  of: ItemDays,
  purchases: readonly Purchase[],
  days: readonly number[],
): number[] {
  const all = walked(of, purchases);
  let kg = of.stockServesKg;
  let k = 0;
  return days.map((day) => {
    let wasteKg = 0;
    for (; k < all.length && all[k]!.day <= day; k++) {
      kg = all[k]!.toKg;
      if (all[k]!.day === day) wasteKg += all[k]!.wasteKg;
    }
    return Math.max(0, kg - of.sumKg[day]!) + wasteKg;
  });
}

/** The place in the line of needs up to which feed is bought after the trips of each day; what nobody eats in time is none of it. */
export function placesKg(
  of: ItemDays,
  purchases: readonly Purchase[],
  days: readonly number[],
): number[] {
  const all = walked(of, purchases);
  return days.map((day) => all.findLast((each) => each.day <= day)?.toKg ?? of.stockServesKg);
}

/** Whether an item that is bought for no longer than to its next trip finds room for that on all days. */
export function hasRoomFor(
  of: ItemDays,
  days: readonly number[],
  stops: readonly Stop[],
  room: readonly number[],
): boolean {
  const bagKg = Math.max(0, ...of.item.offers.map((offer) => offer.bagKg));
  let k = stops.length - 1;
  let nextDueKg = of.sumKg.at(-1)!;
  for (let d = days.length - 1; 0 <= d; d--) {
    const day = days[d]!;
    if (room[d]! < nextDueKg - of.sumKg[day]! + bagKg) return false;
    if (stops[k]?.day !== day) continue;
    nextDueKg = dueBeforeKg(of, day);
    while (stops[k]?.day === day) k--;
  }
  return true;
}

/** Each day of trips once; trips are in the order of their days. */
export const daysOf = (trips: readonly Trip[]): number[] => [
  ...new Set(trips.map(({ day }) => day)),
];

/** Needs that nothing was bought for, by the first day of each gap. */
export function shortOf(of: ItemDays, item: number, purchases: readonly Purchase[]) {
  const short: { item: number; day: number; kg: number }[] = [];
  let kg = of.stockServesKg;
  const until = (dueKg: number): void => {
    if (dueKg - kg <= TINY_KG) return;
    short.push({ item, day: of.sumKg.findIndex((sum) => kg + TINY_KG < sum) - 1, kg: dueKg - kg });
    kg = dueKg;
  };
  for (const { day, offer, bags } of purchases) {
    until(dueBeforeKg(of, day));
    const { bagKg, keepsDays } = of.item.offers[offer]!;
    kg = served(kg, bags * bagKg, untilKg(of.sumKg, day + keepsDays));
  }
  until(of.sumKg.at(-1)!);
  return short;
}
