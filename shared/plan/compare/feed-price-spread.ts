import { fromFarm } from '../../explain/quantity.js';
import type { FeedProduct } from '../../farm/product.js';
import { addDays } from '../../calendar/plain-date.js';
import type { Asked, ScaledSpread } from './stated-spreads.js';

/** Prices that held longer ago say little of what is still to come. */
const DAYS_BACK = 3 * 365;

/**
 * What feed costs more and less, as far as the household said it may; where it did not, as far as its
 * price was another within three years. None where neither is known: no round share is tried.
 */
export function feedPriceSpread({ picture, plan }: Asked): readonly ScaledSpread[] {
  const { today, products } = picture;
  const since = addDays(today, -DAYS_BACK);
  let isStated = false;
  const moved = plan.bill.lines.flatMap(({ label, product, price, cost }) => {
    const feed = products.find(
      (each): each is FeedProduct => each.kind === 'feed' && each.name === product,
    );
    if (!feed || !cost || price === undefined || !label.endsWith(' feed')) return [];
    const before = (feed.earlierPrices ?? []).filter(({ until }) => since <= until);
    const known = feed.mayCost
      ? [feed.mayCost.low, feed.mayCost.high]
      : before.map((each) => each.price);
    if (feed.mayCost) isStated = true;
    const shares = [price, ...known].map((each) => Number(each) / Number(price));
    const by = (share: number): number => Math.round(cost.value * (share - 1));
    return [{ low: by(Math.min(...shares)), high: by(Math.max(...shares)), cost: cost.value }];
  });
  const sumOf = (of: 'low' | 'high' | 'cost'): number =>
    moved.reduce((sum, each) => sum + each[of], 0);
  if (sumOf('low') === sumOf('high')) return [];
  return [
    {
      what: 'What feed costs',
      because: isStated ? 'you said it may cost that' : 'it cost that within three years',
      rows: [],
      ends: (['low', 'high'] as const).map((end) => ({
        input: fromFarm('Feed', sumOf('cost') + sumOf(end), 'money'),
        addsMinor: sumOf(end),
        yieldFactor: 1,
      })),
    },
  ];
}
