import { addDays } from '../../calendar/plain-date.js';
import {
  datedFact,
  from,
  fromFarm,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../../explain/quantity.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { FedAnimals } from './feed-animals.js';
import { outDay } from './feed-trips.js';
import { feedYearFormulas } from './feed-year-formulas.js';
import { YEAR_DAYS, type FeedOfYear, type YearBuying } from './year-buying.js';

/** One feed of the year. */
export interface FeedKind {
  readonly name: string;
  readonly eatenBy: readonly string[];
  readonly fed: NumberQuantity;
  readonly bags: NumberQuantity;
  /** Left out where it has no price. */
  readonly cost?: NumberQuantity;
  readonly inStore?: NumberQuantity;
  /** Without buying any more; left out where it lasts the year. */
  readonly runsOut?: Quantity;
}

export function feedKind(
  { today }: FarmPicture,
  plans: FedAnimals,
  { plan, problem }: YearBuying,
  { feed, item }: { feed: FeedOfYear; item: number },
): FeedKind {
  const { name, eatenBy, needKg, stock, bought } = feed;
  const mine = plan.purchases.filter((each) => each.item === item);
  const eaters = plans.batches.filter((batch) => eatenBy.includes(batch.name));
  const fed = quantity(
    name,
    needKg.reduce((sum, kg) => sum + kg, 0),
    'kg',
    feedYearFormulas.fed,
    eaters.map((each) => from(each.plan.feed.total, undefined, `${each.name}, in all`)),
  );
  const bags = quantity(
    name,
    mine.reduce((sum, each) => sum + each.bags, 0),
    'bags',
    feedYearFormulas.bags,
    [from(fed), ...bought.map((each) => fromFarm(`One bag of ${each.name}`, each.bagKg, 'kg'))],
  );
  const storeKg = stock.reduce((sum, { kg }) => sum + kg, 0);
  const inStore =
    stock.length === 0
      ? undefined
      : quantity(
          `${name} in store`,
          storeKg,
          'kg',
          feedYearFormulas.inStore,
          stock.map((lot) => fromFarm(`${lot.feed.name}, left of ${lot.on}`, lot.kg, 'kg')),
        );
  const out = outDay(needKg, { ...plan, purchases: [] }, { problem, item });
  return {
    ...{ name, eatenBy, fed, bags },
    ...(bought.every(({ price }) => price === undefined)
      ? {}
      : {
          cost: quantity(
            name,
            mine.reduce((sum, { cost }) => sum + cost, 0),
            'money',
            feedYearFormulas.sum,
            [from(bags, 'n'), input('Trips', mine.length, 'count')],
          ),
        }),
    ...(inStore ? { inStore } : {}),
    ...(inStore && out < YEAR_DAYS
      ? {
          runsOut: datedFact(`${name} runs out`, addDays(today, out), feedYearFormulas.runsOut, [
            from(inStore, 'S'),
          ]),
        }
      : {}),
  };
}
