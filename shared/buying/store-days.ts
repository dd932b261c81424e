import type { BuyingPlan, BuyingProblem } from './buying-problem.js';
import { itemDays } from './item-days.js';
import { placesKg, stocksKg } from './store-by-trip.js';

/** What lies in the store each day of a plan, after its trips and before its feeding, kg. */
export function storeByDay(problem: BuyingProblem, plan: BuyingPlan): Float64Array {
  const kg = new Float64Array(problem.days);
  const days = [...kg.keys()];
  problem.items.forEach((item, i) => {
    const of = itemDays(problem, item);
    const mine = plan.purchases.filter((bought) => bought.item === i);
    stocksKg(of, mine, days).forEach((stock, day) => (kg[day]! += stock));
  });
  return kg;
}

/** The first day on which an item is no longer served by what is bought up to a purchase. */
export function lastsTo(
  problem: BuyingProblem,
  plan: BuyingPlan,
  item: number,
): Map<number, number> {
  const of = itemDays(problem, problem.items[item]!);
  const mine = plan.purchases.filter((bought) => bought.item === item);
  const days = [...new Set(mine.map(({ day }) => day))];
  const places = placesKg(of, mine, days);
  return new Map(
    days.map((day, d) => {
      const kg = Math.max(of.sumKg[day]!, places[d]!);
      const end = of.sumKg.findIndex((sum) => kg + TINY_KG < sum);
      return [day, end < 0 ? problem.days : end - 1];
    }),
  );
}

const TINY_KG = 1e-6;
