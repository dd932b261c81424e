import type { BuyingProblem, Offer, Trip } from './buying-problem.js';
import { dueBeforeKg, isFetchedOn, servesUntilKg, type ItemDays } from './item-days.js';

const TINY_KG = 1e-6;

/**
 * The fewest trips, each as late as something allows: on each everything is bought for as long as it
 * keeps. Prices do not count, but that each item goes by its cheapest offer.
 *
 * @param liked the supplier from whom all is bought that is sold there
 * @param keepsShare of the days that feed keeps, for smaller and more trips where the store is small
 */
export function firstTrips(
  problem: BuyingProblem,
  items: readonly ItemDays[],
  liked?: number,
  keepsShare = 1,
): readonly Trip[] {
  const cheapest = items.map(({ item }) => cheapestOf(item.offers, liked));
  const boughtKg = items.map(({ stockServesKg }) => stockServesKg);
  const itemsOf = problem.suppliers.map((_, supplier) =>
    [...items.keys()].filter((i) => cheapest[i]?.supplier === supplier),
  );
  const trips: Trip[] = [];
  for (let day = 0; day < problem.days; day++) {
    for (let supplier = 0; supplier < problem.suppliers.length; supplier++) {
      const { days } = problem.suppliers[supplier]!;
      const mine = itemsOf[supplier]!;
      if (days[day] !== 1 || mine.length === 0) continue;
      const next = days.indexOf(1, day + 1);
      // A trip goes only where something cannot wait for the next day on which one could go.
      const isDue = mine.some(
        (i) =>
          boughtKg[i]! + TINY_KG <
          (next < 0 ? items[i]!.sumKg.at(-1)! : dueBeforeKg(items[i]!, next)),
      );
      if (!isDue) continue;
      trips.push({ supplier, day });
      for (const i of mine.filter((each) => isFetchedOn(items[each]!, supplier, day)))
        boughtKg[i] = Math.max(
          boughtKg[i]!,
          servesUntilKg(
            items[i]!,
            cheapest[i]!,
            day,
            Math.floor(keepsShare * cheapest[i]!.keepsDays),
          ),
        );
    }
  }
  return trips;
}

function cheapestOf(offers: readonly Offer[], liked: number | undefined): Offer | undefined {
  const there = offers.filter(({ supplier }) => supplier === liked);
  const perKg = ({ costOf, bagKg }: Offer): number => costOf(1) / bagKg;
  return (0 < there.length ? there : offers).reduce<Offer | undefined>(
    (best, offer) => (best && perKg(best) <= perKg(offer) ? best : offer),
    undefined,
  );
}
