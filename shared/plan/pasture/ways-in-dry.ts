import { daysBetween } from '../../calendar/plain-date.js';
import type { Product } from '../../farm/product.js';
import { costMinor } from '../../money/money.js';
import { formatDate } from '../../units/dates.js';
import { formatMoney, formatValue, type Reader } from '../../units/format.js';
import type { PasturePlan } from './pasture-plan.js';

/**
 * When a household would see that it is drier than the plan it has goes by, and what each way to
 * answer it comes to on that day; empty where no more is fed or bought.
 */
export function waysInDry(
  base: PasturePlan,
  dry: PasturePlan,
  products: readonly Product[],
  reader: Reader,
): string {
  const seenOn = dry.weather.dry?.from;
  // Where the herds eat standing what was shut, no more is fed, but less hay is made of it.
  const moreKg = Math.max(
    dry.hay.all.value - base.hay.all.value,
    dry.hay.toBuy.value - base.hay.toBuy.value,
  );
  if (seenOn === undefined || moreKg < 1) return '';
  const bales = dry.hay.balesToBuy.value - base.hay.balesToBuy.value;
  const ways = [
    ...(0 < bales ? [`buy ${formatValue(bales, 'bales', reader)}${costOf(bales)}`] : []),
    ...fewerHead(dry, seenOn, moreKg, reader),
  ];
  if (ways.length === 0) return '';
  return ` You would see it from ${formatDate(seenOn, reader)}, when the soil begins to slow the grass. To answer it from that day: ${ways.join('; or ')}.`;

  function costOf(count: number): string {
    const [price] = products
      .flatMap((each) => (each.kind === 'hay' ? [each.price] : []))
      .sort((a, b) => Number(a) - Number(b));
    return price === undefined
      ? ' of hay (type what a bale costs under Feed to see the money)'
      : ` of hay, about ${formatMoney(costMinor(price, count, reader.currency), reader.currency)} at your price`;
  }
}

/** Head that would have to go on a day, so that no more is needed: what is known then is what each needs. */
function fewerHead(
  { herds, from, to }: PasturePlan,
  seenOn: string,
  moreKg: number,
  reader: Reader,
): string[] {
  const day = Math.max(0, daysBetween(from, seenOn));
  const head = herds
    .flatMap(({ groups }) => groups)
    .reduce((sum, { headByDay }) => sum + (headByDay[day] ?? 0), 0);
  const needKg = herds
    .flatMap(({ needByDay }) => needByDay.slice(day))
    .reduce((sum, kg) => sum + kg, 0);
  const eachKg = head === 0 ? 0 : needKg / head;
  const fewer = eachKg === 0 ? Infinity : Math.ceil(moreKg / eachKg);
  if (head <= fewer) return [];
  return [
    `sell or ship ${fewer} of ${head} head, each of which needs about ${formatValue(eachKg, 'kg', reader)} of dry matter until ${formatDate(to, reader)}`,
  ];
}
